/**
 * Which of two classes comes first. Source: precedence table of ADR 2.1.3.10 (49 CFR 173.2a(b)), from memory; toxicity by
 * mouth or of dust, none through skin.
 */
import type { PackingGroup } from '../../reference/transport-tables';

/** Class 6.1 before class 8. */
export function toxicComesFirst(
  toxic: PackingGroup,
  corrosive: PackingGroup,
  state: 'liquid' | 'solid',
): boolean {
  if (corrosive === 'I' || toxic === 'III') return false;
  if (toxic === 'I') return true;
  return corrosive === 'III' || state === 'solid';
}
