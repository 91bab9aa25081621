import fc from 'fast-check'

/** One seed for all property tests, so that a failure anywhere is the same everywhere; another by FALLROOM_SEED. */
fc.configureGlobal({ seed: Number(process.env.FALLROOM_SEED ?? 20261125) })
