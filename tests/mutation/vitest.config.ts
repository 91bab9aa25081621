import { defineConfig } from 'vitest/config'

/** Only the quick tests of the layers whose wrong signs kill; a mutant is held against these. */
export default defineConfig({
  test: {
    include: [
      'src/{geometry,solver,rules}/**/*.test.ts',
      'tests/unit/room/{build,every-swing,gaps,mesh-gaps,nearest,surface,tie-off,top-under,underside}.test.ts',
      'tests/unit/time/{body,check,connector,impact,kernel,laws,mesh,noted,ode,pulley,rope,stable-step,taken}.test.ts',
      'tests/mutation/**/*.test.ts',
    ],
    environment: 'node',
    setupFiles: ['tests/support/setup.ts'],
    testTimeout: 60_000,
  },
})
