/** Hazard and precautionary statements in the words of the law. Each keeps the edition it was taken from. */
import * as z from 'zod/mini';
import { checked } from './checked';
import statementsJson from './statements.json';
import { told } from './tables';

export type StatementCode = keyof typeof statementsJson;
export const statementCodes = Object.keys(statementsJson) as [StatementCode, ...StatementCode[]];

const Statement = z.strictObject({ text: z.string(), ...told });

export const statements = checked(() => z.record(z.enum(statementCodes), Statement), statementsJson);
