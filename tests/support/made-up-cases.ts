/**
 * The gate tries the same made-up cases each time, so that what it says comes of a change and not of luck.
 * `SEED=any` tries new ones, a number those of that seed: for whoever has changed what a property tells of.
 */
import * as fc from 'fast-check';

const said = process.env.SEED ?? '20261129';

if (said !== 'any') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(said) });
