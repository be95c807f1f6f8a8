/** Irritation of the airways: shares add up as parts of their own limits or of 20 % (CLP Annex I, 3.8.3.4.5). */
import { clp } from '../../reference/clp-tables';
import { type Found, limitOf, whole, worstOf } from './found';
import { fraction, isRelevant, ownLimit, type Part } from './parts';

const generic = limitOf('Generic limit for irritation of the airways', clp.respiratoryIrritation, '%');

export function airways(parts: readonly Part[]): Found[] {
  const terms = parts.flatMap((part) => {
    const own = ownLimit(part, 'STOT SE', '3');
    const irritates = own ?? part.substance.classes.some((c) => c.class === 'STOT SE' && c.category === '3');
    if (!irritates || !isRelevant(part, 'STOT SE')) return [];
    return [{ share: part.share, limit: own ?? generic }];
  });
  const figure = fraction('Irritation of the airways, part of the limit', terms);
  const hazard = { class: 'STOT SE', category: '3', code: 'H335' } as const;
  return worstOf('respiratoryIrritation', [{ hazard, ground: figure && { figure, limit: whole } }]);
}
