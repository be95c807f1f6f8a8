/**
 * What to look at, as ink lines in a box of 96 × 96. A path that closes (Z) is filled with paper and hides what lies behind
 * it; all others are lines. Corners are square; round is for vessels, clocks and heads.
 */
const circle = (x: number, y: number, radius: number): string =>
  `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;

/** Two clock hands, from the middle. */
const hands = (x: number, y: number, long: number): string =>
  `M${x} ${y}V${y - long}M${x} ${y}h${Math.round(long * 0.7)}`;

const arrowDown = (x: number, from: number, to: number): string =>
  `M${x} ${from}V${to}M${x - 7} ${to - 8}L${x} ${to}L${x + 7} ${to - 8}`;
const arrowUp = (x: number, from: number, to: number): string =>
  `M${x} ${from}V${to}M${x - 6} ${to + 7}L${x} ${to}L${x + 6} ${to + 7}`;
const beaker = 'M22 30V90H74V30';
const person = (x: number): readonly string[] => [
  circle(x, 34, 9),
  `M${x - 13} 88V60L${x - 8} 48H${x + 8}L${x + 13} 60V88`,
];
const canInTray = (x: number): readonly string[] => [
  `M${x + 3} 40H${x + 21}V76H${x + 3}Z`,
  `M${x + 8} 30H${x + 16}V40H${x + 8}Z`,
  `M${x} 68L${x + 2} 82H${x + 22}L${x + 24} 68`,
];

export const drawings = {
  gloves: [
    'M30 92V58L14 44V34L22 32L31 42V14H39V38H41V7H50V38H52V11H60V38H62V18H70V58L66 64V92Z',
    'M30 64H66',
    'M38 70H58V84H38Z',
    'M43 77H53',
  ],
  goggles: [
    'M20 30H76V82L64 92H32L20 82Z',
    'M12 20H84V32H12Z',
    'M26 46H45V62H26Z',
    'M51 46H70V62H51Z',
    'M45 54H51',
  ],
  ribbon: [
    'M6 6H90V90H6Z',
    'M16 36H80V82H16Z',
    'M32 48H64V70H32Z',
    'M16 36L32 48M80 36L64 48M16 82L32 70M80 82L64 70',
    'M16 14H80V36H16Z',
    'M24 30L34 20M34 32L46 20',
    'M48 36C42 44 54 50 48 62M42 55L48 63L54 55',
  ],
  wind: [
    'M32 6H64V24H32Z',
    'M28 50L38 26M68 50L58 26',
    'M26 46H70V60H26Z',
    circle(48, 53, 10),
    arrowUp(26, 92, 70),
    arrowUp(48, 92, 70),
    arrowUp(70, 92, 70),
  ],
  tray: ['M32 30H64V82H32Z', 'M41 18H55V30H41Z', 'M32 52H64', 'M6 70L10 88H86L90 70'],
  'vent-cover': [beaker, 'M22 60H74', 'M12 26Q48 40 84 26', 'M84 20Q90 15 84 10Q78 5 84 1'],
  'vent-cap': [
    'M28 92V64L38 54V42H58V54L68 64V92',
    'M34 22H62V42H34Z',
    'M44 22V12H52V22',
    'M90 14H62M69 7L61 14L69 21',
  ],
  'fill-line': ['M22 10V90H66V10', 'M22 62H66', 'M30 71H40M48 71H58M36 80H52', 'M74 62L88 54V70Z'],
  'beaker-water': [beaker, 'M22 60H74', 'M32 70H44M52 78H64', arrowDown(48, 4, 46)],
  'vessel-mark': [circle(48, 48, 42), circle(48, 48, 34), 'M48 26L68 60H28Z', 'M42 44H53V50H43V56H54'],
  'bottle-label': [
    'M28 92V44L39 32V16H57V32L68 44V92Z',
    'M37 6H59V16H37Z',
    'M28 52H68V84H28Z',
    'M35 60H61M35 68H52M35 76H57',
  ],
  'bag-label': [
    'M20 22L28 6H68L76 22V90H20Z',
    'M20 22H76',
    'M28 34H68V74H28Z',
    'M35 46H61M35 54H61M35 62H50',
  ],
  pipette: [
    'M37 6H51V26H37Z',
    'M41 26V62L44 70L47 62V26',
    'M44 76L38 86Q44 94 50 86Z',
    'M68 44Q80 32 92 44Q80 56 68 44Z',
    circle(80, 44, 3),
    'M64 44H54',
  ],
  'spot-plate': [
    'M8 30H88V78H8Z',
    ...[24, 48, 72].flatMap((x) => [circle(x, 44, 7), circle(x, 64, 7)]),
    'M44 4H52V14L48 22L44 14Z',
    'M45 44H51',
  ],
  'ph-paper': [
    'M14 8H30V90H14Z',
    'M14 62H30',
    'M54 8H84V90H54Z',
    'M54 24H84M54 41H84M54 57H84M54 74H84',
    'M34 49H48M42 43L49 49L42 55',
  ],
  strip: [
    'M10 8H24V90H10Z',
    'M10 30H24',
    'M36 8H54V90H36Z',
    'M36 28H54M36 49H54M36 70H54',
    circle(76, 34, 16),
    hands(76, 34, 10),
  ],
  thermometer: [beaker, 'M22 52H74', 'M43 6H53V66H43Z', circle(48, 72, 8), 'M28 74H36M60 74H68'],
  scales: ['M10 68H86V90H10Z', 'M36 74H76V84H36Z', 'M18 58H78M48 58V68', 'M28 40H68L60 56H36Z'],
  filter: [
    'M18 20H78V44H18Z',
    'M18 40H78',
    'M18 44L42 60V70H54V60L78 44',
    'M40 70H56L74 92H22Z',
    arrowDown(48, 2, 34),
  ],
  trap: [
    'M4 90L14 66V52H26V66L36 90Z',
    'M42 58H60V90H42Z',
    'M68 62H92V90H68Z',
    'M20 52V38H51V58',
    'M56 58V46H80V62',
    circle(80, 76, 7),
  ],
  parts: [
    'M6 26H90V80H6Z',
    'M14 34H82V72H14Z',
    'M22 42H34V50H22Z',
    'M44 40H52V48H44Z',
    'M62 44H74V50H62Z',
    'M26 58H34V66H26Z',
    'M44 56H58V63H44Z',
    'M66 58H74V66H66Z',
  ],
  copper: ['M16 8H36V88H16Z', 'M22 24L30 16M22 36L30 28', 'M60 8H80V88H60Z', 'M52 10L88 86M88 10L52 86'],
  tub: ['M16 36L22 90H74L80 36Z', 'M12 24H84V36H12Z', 'M34 50H62V76H34Z', 'M40 58H56M40 67H52'],
  fume: [
    'M6 6H90V90H6Z',
    'M30 58V82H66V58',
    'M30 68H66',
    'M38 54Q32 47 38 40Q44 33 38 26M48 54Q42 47 48 40Q54 33 48 26M58 54Q52 47 58 40Q64 33 58 26',
    'M6 18H90',
    'M14 34L24 24M14 46L30 30',
  ],
  foam: [
    'M22 6V90H66V6',
    'M22 68H66',
    ...[30, 44, 58].map((x) => circle(x, 61, 6)),
    ...[32, 46, 59].map((x) => circle(x, 48, 6)),
    ...[36, 52].map((x) => circle(x, 35, 6)),
    'M74 48L88 40V56Z',
  ],
  sign: ['M18 4H78V92H18Z', 'M30 18H66V44H30Z', 'M37 27H59M37 35H53', circle(68, 58, 4)],
  person: [...person(20), ...person(76), circle(48, 20, 14), hands(48, 20, 9)],
  eyewash: [
    'M10 64H86L72 80H24Z',
    'M48 80V94',
    'M30 64V54M66 64V54',
    'M30 50V30Q30 20 40 20M66 50V30Q66 20 56 20',
    'M24 46V28M72 46V28',
    'M40 14Q48 6 56 14Q48 22 40 14Z',
  ],
  exit: [
    'M62 8H88V70H62Z',
    circle(68, 40, 3),
    'M6 46H34V52H6Z',
    'M10 52V70M30 52V70',
    'M4 70H92',
    'M14 84H70M62 77L71 84L62 91',
  ],
  phone: [
    'M26 4H70V92H26Z',
    'M32 14H64V78H32Z',
    'M38 36H56V54H38Z',
    'M56 41H60V49H56',
    'M42 40V50M47 40V50M52 40V50',
    'M44 85H52',
  ],
  kit: [
    'M6 42L10 90H52L56 42Z',
    'M4 32H58V42H4Z',
    'M18 56H44V76H18Z',
    'M24 66H38',
    'M66 62H92L88 90H70Z',
    'M76 62V30H82V62',
  ],
  bulge: [
    'M8 90V38L14 28V16H28V28L34 38V90Z',
    'M12 8H30V16H12Z',
    'M60 90Q48 64 60 38L64 28V16H78V28L82 38Q94 64 82 90Z',
    'M62 8H80V16H62Z',
  ],
  apart: [...canInTray(2), ...canInTray(36), ...canInTray(70)],
  dryer: [
    'M8 10H88V90H8Z',
    'M16 20H60V82H16Z',
    'M24 32H52V60H24Z',
    circle(74, 32, 9),
    'M74 32V25',
    'M71 52H77V72H71Z',
    circle(74, 76, 5),
  ],
  paper: [
    'M12 4H66V92H12Z',
    'M22 18H56M22 28H56M22 38H46',
    'M22 78H56',
    'M26 76Q30 60 34 74Q38 64 42 74Q46 66 50 74',
    'M94 46H66Q56 46 56 52Q56 58 66 58H94',
  ],
  vehicle: [
    'M6 16H90V74H6Z',
    'M18 36H42V70H18Z',
    'M24 28H36V36H24Z',
    'M52 36H78V70H52Z',
    'M58 28H72V36H58Z',
    'M6 50H90',
    'M14 74H30V90H14Z',
    'M66 74H82V90H66Z',
  ],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type Drawing = keyof typeof drawings;
