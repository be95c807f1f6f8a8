/** What each way of knowing is called, on screens and papers alike. */

/** How a value is known, as it stands under it. */
export const howKnownWords: Readonly<Record<string, string>> = {
  assay: 'laboratory assay',
  photometer: 'photometer',
  strip: 'test strip',
  titration: 'titration',
  'titration-volumes': 'titration, from volumes',
  weighing: 'weighing',
  reading: 'reading',
  stated: 'as stated',
  assumed: 'assumed',
  'worked-out': 'worked out',
  constant: 'a constant, by its source',
  'copper-weighed': 'copper weighed in and out',
  'metals-recovered': 'silver, palladium recovered',
  typical: 'typical of the feed',
  'feed-minus-residue': 'feed less dried residue',
  ph: 'from pH',
  'charged-minus-consumed': 'acid charged less consumed',
  'not-determined': 'not determined',
};
