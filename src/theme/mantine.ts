/** Mantine dressed in our tokens: flat, 13 px, radius 4, one accent. Colours come from CSS variables (theme.css). */
import {
  ActionIcon,
  Button,
  createTheme,
  type MantineColorsTuple,
  Menu,
  Modal,
  NativeSelect,
  Popover,
  Select,
  TextInput,
  Tooltip,
} from '@mantine/core'

const accent = Array.from({ length: 10 }, () => 'var(--accent)') as unknown as MantineColorsTuple

export const mantineTheme = createTheme({
  primaryColor: 'accent',
  colors: { accent },
  fontFamily: "'Inter Variable', Inter, system-ui, sans-serif",
  fontFamilyMonospace: "'Inter Variable', Inter, system-ui, sans-serif",
  fontSizes: { xs: '0.6875rem', sm: '0.8125rem', md: '0.8125rem', lg: '0.9375rem', xl: '1.0625rem' },
  spacing: { xs: '4px', sm: '8px', md: '12px', lg: '16px', xl: '24px' },
  radius: { xs: '4px', sm: '4px', md: '4px', lg: '4px', xl: '4px' },
  defaultRadius: 'sm',
  shadows: { xs: 'none', sm: 'none', md: 'none', lg: 'none', xl: 'none' },
  respectReducedMotion: true,
  cursorType: 'pointer',
  focusRing: 'auto',
  components: {
    Button: Button.extend({ defaultProps: { size: 'xs', variant: 'default' } }),
    ActionIcon: ActionIcon.extend({ defaultProps: { size: 'md', variant: 'subtle', color: 'gray' } }),
    Modal: Modal.extend({
      defaultProps: {
        transitionProps: { duration: 100 },
        overlayProps: { opacity: 0.4 },
        closeButtonProps: { 'aria-label': 'Close this window' },
      },
    }),
    Menu: Menu.extend({ defaultProps: { transitionProps: { duration: 80 } } }),
    Popover: Popover.extend({ defaultProps: { transitionProps: { duration: 80 } } }),
    Tooltip: Tooltip.extend({
      defaultProps: { openDelay: 400, transitionProps: { duration: 80 }, multiline: true },
    }),
    TextInput: TextInput.extend({ defaultProps: { size: 'xs' } }),
    Select: Select.extend({ defaultProps: { size: 'xs', allowDeselect: false } }),
    NativeSelect: NativeSelect.extend({ defaultProps: { size: 'xs' } }),
  },
})
