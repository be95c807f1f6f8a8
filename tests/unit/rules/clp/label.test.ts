import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clp } from '../../../../src/reference/clp-tables';
import { statements } from '../../../../src/reference/statements-tables';
import { routes, substanceIds, substances } from '../../../../src/reference/substances-tables';
import { type Hazard, hazardOf, hazardText } from '../../../../src/rules/clp/hazard';
import { labelElements } from '../../../../src/rules/clp/label';

const hazard = (text: string): Hazard => {
  const found = hazardOf(text);
  if (!found) throw new Error(`no hazard: ${text}`);
  return found;
};
const label = (...texts: string[]) => labelElements(texts.map(hazard));
const codes = (told: readonly { readonly code: string }[]): string[] => told.map(({ code }) => code);

/** Every hazard that calculation, pH or test may bring here. */
const known: readonly Hazard[] = [
  ...substanceIds.flatMap((id) => {
    const { classes, limits = [], notified = [], byTest = [] } = substances[id];
    return [...classes, ...limits, ...notified, ...byTest].map(({ class: name, category, code, ...c }) => ({
      class: name,
      category,
      code,
      ...(c.route ? { route: c.route } : {}),
    }));
  }),
  ...Object.entries(clp.acute).flatMap(([route, { codes: all }]) =>
    all.map((code, i) => ({
      class: 'Acute Tox.' as const,
      category: `${i + 1}`,
      route: routes.find((r) => r === route) ?? 'oral',
      code,
    })),
  ),
  ...['Skin Corr. 1 H314', 'Ox. Liq. H272', 'Ox. Sol. H272', 'STOT RE 2 H373', 'Aquatic Chronic 2 H411'].map(
    hazard,
  ),
  ...['Aquatic Chronic 3 H412', 'Aquatic Chronic 4 H413'].map(hazard),
];

describe('every hazard that may come', () => {
  it.each(known.map((h) => [hazardText(h), h] as const))('%s is read back as it was written', (text, h) =>
    expect(hazardOf(text)).toEqual(h),
  );

  it('has a row of what its label bears, and every statement in it has a text', () => {
    for (const h of known) {
      const alone = labelElements([h]);
      expect(codes(alone.hazardStatements), hazardText(h)).toEqual([h.code]);
      expect(alone.precautions.length, hazardText(h)).toBeGreaterThan(0);
    }
  });

  it('is not taken for one where it is none', () => {
    for (const text of ['', 'HP 8', 'Skin Corr. 1B', 'Acute Tox. 4 (ear) H332', 'Skin Corr. 9 H31'])
      expect(hazardOf(text)).toBeNull();
  });

  it('no statement lies unused', () => {
    const used = new Set([
      ...known.map((h) => h.code),
      ...clp.label.elements.flatMap((e) => e.precautions),
      ...clp.single.flatMap((row) => row.below?.code ?? []),
      ...Object.values(clp.acute).flatMap((a) => a.codes),
      ...['EUH071', 'EUH208', 'P403'],
    ]);
    // Classes that the limits know and no substance of the table has yet.
    const spare = ['H271', 'H340', 'H350', 'H351', 'H370'];
    expect(Object.keys(statements).filter((code) => !used.has(code) && !spare.includes(code))).toEqual([]);
  });
});

describe('precedence', () => {
  it('a skull takes the exclamation mark away', () => {
    expect(label('Acute Tox. 3 (inhalation vapour) H331', 'Skin Sens. 1 H317').pictograms).toEqual(['GHS06']);
  });

  it('corrosion takes it away for skin and eye only', () => {
    expect(label('Skin Corr. 1 H314', 'Eye Irrit. 2 H319').pictograms).toEqual(['GHS05']);
    expect(label('Skin Corr. 1 H314', 'STOT SE 3 H335').pictograms).toEqual(['GHS05', 'GHS07']);
    expect(label('Met. Corr. 1 H290', 'Skin Irrit. 2 H315').pictograms).toEqual(['GHS05']);
  });

  it('an allergy of the airways takes it away for skin', () => {
    expect(label('Resp. Sens. 1 H334', 'Skin Sens. 1 H317', 'Skin Irrit. 2 H315').pictograms).toEqual([
      'GHS08',
    ]);
    expect(label('Carc. 1A H350i', 'Skin Sens. 1 H317').pictograms).toEqual(['GHS07', 'GHS08']);
  });

  it('statements that another one says fall away', () => {
    expect(
      codes(
        label('Skin Corr. 1B H314', 'Eye Dam. 1 H318', 'Aquatic Acute 1 H400', 'Aquatic Chronic 1 H410')
          .hazardStatements,
      ),
    ).toEqual(['H314', 'H410']);
    expect(codes(label('Aquatic Acute 1 H400', 'Aquatic Chronic 2 H411').hazardStatements)).toEqual([
      'H400',
      'H411',
    ]);
    expect(codes(label('Repr. 1A H360Df', 'Repr. 1B H360D').hazardStatements)).toEqual(['H360Df']);
  });

  it('of one family only the worse class is told', () => {
    const told = label('STOT RE 1 H372', 'STOT RE 2 H373', 'Skin Corr. 1 H314', 'Skin Irrit. 2 H315');
    expect(codes(told.hazardStatements)).toEqual(['H314', 'H372']);
    expect(codes([...told.precautions, ...told.furtherPrecautions])).not.toContain('P332+P313');
    expect(label('STOT RE 1 H372', 'STOT RE 1 H372')).toEqual(label('STOT RE 1 H372'));
  });

  it('a signal word only where a class has one, and the stronger one', () => {
    expect(label('Aquatic Chronic 2 H411').signalWord).toBeNull();
    expect(label('Aquatic Acute 1 H400', 'Aquatic Chronic 2 H411').signalWord).toBe('Warning');
    expect(label('Aquatic Acute 1 H400', 'Eye Dam. 1 H318').signalWord).toBe('Danger');
    expect(labelElements([]).signalWord).toBeNull();
  });
});

describe('precautions', () => {
  it('are six at most, the others are listed, and none twice', () => {
    fc.assert(
      fc.property(fc.subarray([...known]), (accepted) => {
        const { precautions, furtherPrecautions } = labelElements(accepted);
        const all = [...codes(precautions), ...codes(furtherPrecautions)];
        expect(precautions.length).toBeLessThanOrEqual(6);
        expect(new Set(all).size).toBe(all.length);
        if (furtherPrecautions.length > 0) expect(precautions.length).toBe(6);
      }),
    );
  });

  it('corrosive liquor: cover yourself, do not breathe it, and first aid', () => {
    expect(codes(label('Skin Corr. 1A H314', 'Eye Dam. 1 H318').precautions)).toEqual([
      'P280',
      'P260',
      'P303+P361+P353',
      'P305+P351+P338',
      'P304+P340',
      'P310',
    ]);
  });

  it('never tell anybody to close tight what still gives off gas', () => {
    const accepted = [...known];
    const told = labelElements(accepted, { mustVent: true });
    const texts = [...told.precautions, ...told.furtherPrecautions].map((s) => s.text);
    expect(texts.filter((text) => text.includes('tightly closed'))).toEqual([]);
    expect(codes([...told.precautions, ...told.furtherPrecautions])).toContain('P403');
    expect(told.mustVent).toBe(true);
    const still = labelElements(accepted);
    expect(codes([...still.precautions, ...still.furtherPrecautions])).toContain('P403+P233');
  });
});

describe('statements besides', () => {
  it('name the sensitiser', () => {
    const { supplements } = labelElements([], {
      supplements: [{ code: 'EUH208', names: ['nickel dinitrate'] }],
    });
    expect(supplements[0]?.text).toBe('Contains nickel dinitrate. May produce an allergic reaction.');
  });
});
