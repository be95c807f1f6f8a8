/** How often each fault is brought about: in the gate as often as there is time for, at night as somebody says (`faults.mjs`). */

const said = (name: string, usual: number): number => Number(process.env[name] ?? usual);

export const howMany = {
  kills: said('FAULTS_KILLS', 20),
  intentions: said('FAULTS_INTENTIONS', 10_000),
  files: said('FAULTS_FILES', 2_000),
  /** Ways in which each byte is changed. */
  ways: said('FAULTS_WAYS', 1),
  /** Bytes that are changed of a file that takes long to open. */
  places: said('FAULTS_PLACES', 6),
} as const;

/** `SEED=any` makes new cases, a number those of that seed. */
export const seed = (): number => Number(process.env.SEED ?? 20261130) || Date.now();
