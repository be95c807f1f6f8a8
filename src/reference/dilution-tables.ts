/** Why nothing may be diluted away, law by law. */
import * as z from 'zod/mini';
import { checked } from './checked';
import dilutionJson from './dilution.json';
import { told } from './tables';

const Rule = z.strictObject({ rule: z.string(), ...told });

export const dilution = checked(
  () => z.strictObject({ 'us-federal': Rule, 'us-california': Rule, eu: Rule }),
  dilutionJson,
);
