/** A question is read aloud where somebody has asked for it; it falls silent when the question goes. */
import { useSpoken } from '../../ui/speak';
import { useShell } from '../shell';

/** @param text null while something else stands on the screen */
export function useReadAloud(text: string | null): void {
  const { aloud } = useShell();
  useSpoken(aloud.value ? text : null, 'en');
}
