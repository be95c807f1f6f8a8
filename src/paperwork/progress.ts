/** How far a paper is, told while it is made. */

/** What is being done, in this order; a paper may leave some out. */
export type Stage = 'reading' | 'gathering' | 'setting' | 'drawing' | 'closing';

/** `done` of `of` steps of the stage: containers gathered, parts set, pages drawn. `of` is at least 1. */
export type Progress = { readonly stage: Stage; readonly done: number; readonly of: number };

export type Tell = (progress: Progress) => void;

/** Nobody listens. */
export const untold: Tell = () => undefined;
