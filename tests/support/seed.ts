/** Runs before each test file: all property tests draw from one seed, so that what failed once fails again. */
import fc from 'fast-check';

/** Given by tests/fuzz/run.mjs; else always the same. */
fc.configureGlobal({ seed: Number(process.env.PLUMULE_SEED ?? 2_026_112) });
