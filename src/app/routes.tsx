/** Which screen stands at which address. The first pattern that fits wins; ":" takes any part and hands it over. */
import type { ComponentType } from 'preact';
import { BatchList } from '../screens/batches/list';
import { ContainerList } from '../screens/containers/list';
import { GoOnScreen } from '../screens/keeping/go-on';
import { NotWholeScreen } from '../screens/keeping/not-whole';
import { RecordScreen } from '../screens/record/place';
import { Sos } from '../screens/sos/sos';
import { WelcomeScreen } from '../screens/start/welcome';
import { Today } from '../screens/today/today';
import { withEntry, withItsBatch, withMonth, withNamed, withWhole } from '../screens/with-whole';
import { lazyScreen } from './lazy-screen';

/** A screen is given the parts of the address that its pattern named. */
export type Screen = ComponentType<{ readonly at: Readonly<Record<string, string>> }>;

type Everyday = typeof import('./everyday');

let everyday: Everyday | undefined;

/** Fetches the screens that are opened every day, so that each stands there at once when it is. */
export async function loadEveryday(): Promise<Everyday> {
  everyday ??= await import('./everyday');
  return everyday;
}

const daily = (name: keyof Everyday): Screen =>
  lazyScreen(
    async () => (await loadEveryday())[name],
    () => everyday?.[name],
  );

/** Pages that ask the equilibrium model: its constants come with the first of them. */
const treatment = {
  choice: lazyScreen(() => import('../screens/treatment/treatment').then((m) => m.TreatmentScreen)),
  whichPh: lazyScreen(() => import('../screens/treatment/which-ph').then((m) => m.WhichPhScreen)),
  plan: lazyScreen(() => import('../screens/treatment/plan').then((m) => m.PlanScreen)),
  working: lazyScreen(() => import('../screens/treatment/working').then((m) => m.TreatmentWorking)),
};

/** A treatment from its beginning to its end, and the trial on the bench before it. */
const run = {
  choose: lazyScreen(() => import('../screens/treatment/run-choose').then((m) => m.ChooseTreated)),
  begin: lazyScreen(() => import('../screens/treatment/run-begin').then((m) => m.BeginTreatment)),
  already: lazyScreen(() => import('../screens/treatment/run-already').then((m) => m.TreatmentAlready)),
  page: lazyScreen(() => import('../screens/treatment/run-page').then((m) => m.RunPage)),
  dose: lazyScreen(() => import('../screens/treatment/run-dose').then((m) => m.RunDose)),
  reading: lazyScreen(() => import('../screens/treatment/run-reading').then((m) => m.RunReading)),
  end: lazyScreen(() => import('../screens/treatment/run-end').then((m) => m.RunEnd)),
  working: lazyScreen(() => import('../screens/treatment/run-working').then((m) => m.RunWorking)),
  bench: lazyScreen(() => import('../screens/treatment/bench-test').then((m) => m.BenchTest)),
  benchWorking: lazyScreen(() => import('../screens/treatment/bench-working').then((m) => m.BenchWorking)),
};

/** The test for silver: its reactions and sources come with the first of its pages. */
const silver = {
  check: lazyScreen(() => import('../screens/silver-check/silver-check').then((m) => m.SilverCheckScreen)),
  kept: lazyScreen(() => import('../screens/silver-check/kept-check').then((m) => m.KeptCheckScreen)),
  working: lazyScreen(() => import('../screens/silver-check/volume-working').then((m) => m.SilverWorking)),
};

/** Working places, and what a charge makes against what they carry away. */
const stations = {
  list: lazyScreen(() => import('../screens/stations/list').then((m) => m.StationsScreen)),
  one: lazyScreen(() => import('../screens/stations/station').then((m) => m.StationScreen)),
  form: lazyScreen(() => import('../screens/stations/station-form').then((m) => m.StationFormScreen)),
  measured: lazyScreen(() => import('../screens/stations/measured').then((m) => m.MeasuredScreen)),
  working: lazyScreen(() => import('../screens/stations/station').then((m) => m.StationWorking)),
};
const ventilation = {
  check: lazyScreen(() => import('../screens/ventilation/ventilation').then((m) => m.VentilationScreen)),
  working: lazyScreen(() => import('../screens/ventilation/working').then((m) => m.VentilationWorking)),
  kept: lazyScreen(() => import('../screens/ventilation/kept').then((m) => m.KeptCheckScreen)),
  keptWorking: lazyScreen(() => import('../screens/ventilation/kept').then((m) => m.KeptWorking)),
};

/** Last days and amounts, with how each came about. */
const due = {
  all: lazyScreen(() => import('../screens/due/due').then((m) => m.DueScreen)),
  day: lazyScreen(() => import('../screens/due/day').then((m) => m.DueDay)),
  months: withWhole(lazyScreen(() => import('../screens/due/months').then((m) => m.MonthsScreen))),
  month: withMonth(lazyScreen(() => import('../screens/due/month').then((m) => m.MonthScreen))),
  monthWorking: withMonth(lazyScreen(() => import('../screens/due/month').then((m) => m.MonthWorking))),
  waste: lazyScreen(() => import('../screens/due/waste').then((m) => m.WasteScreen)),
  wasteWorking: lazyScreen(() => import('../screens/due/waste').then((m) => m.WasteWorking)),
  onSite: lazyScreen(() => import('../screens/due/on-site').then((m) => m.OnSiteScreen)),
  onSiteWorking: lazyScreen(() => import('../screens/due/on-site').then((m) => m.OnSiteWorking)),
  nearWork: lazyScreen(() => import('../screens/due/near-work').then((m) => m.NearWorkScreen)),
  nearWorkWorking: lazyScreen(() => import('../screens/due/near-work').then((m) => m.NearWorkWorking)),
  calendar: lazyScreen(() => import('../screens/due/calendar').then((m) => m.CalendarScreen)),
};

/** What is asked once in a container's life, or when something went wrong with it. */
const life = {
  found: lazyScreen(() => import('../screens/containers/found').then((m) => m.FoundContainer)),
  unknown: lazyScreen(() => import('../screens/containers/unknown').then((m) => m.UnknownContents)),
  whatItIs: lazyScreen(() => import('../screens/containers/what-it-is').then((m) => m.WhatItIs)),
  change: lazyScreen(() => import('../screens/containers/change').then((m) => m.ChangeVessel)),
  level: lazyScreen(() => import('../screens/containers/level').then((m) => m.ReadLevel)),
  levelWhy: lazyScreen(() => import('../screens/containers/level-why').then((m) => m.LevelWhy)),
  whichEntry: lazyScreen(() => import('../screens/containers/level-why').then((m) => m.WhichEntry)),
  water: lazyScreen(() => import('../screens/containers/water-lost').then((m) => m.WaterLost)),
  labReport: lazyScreen(() => import('../screens/lab-report/lab-report').then((m) => m.LabReport)),
  foundLater: withItsBatch(
    lazyScreen(() => import('../screens/batches/found-later').then((m) => m.FoundLater)),
  ),
};

const backups = {
  make: lazyScreen(() => import('../screens/backup/make').then((m) => m.MakeBackup)),
  restore: lazyScreen(() => import('../screens/backup/restore').then((m) => m.RestoreScreen)),
};

const twoWays = {
  one: lazyScreen(() => import('../screens/two-ways/two-ways').then((m) => m.TwoWaysScreen)),
  all: lazyScreen(() => import('../screens/two-ways/two-ways').then((m) => m.TwoWaysOfAll)),
  working: lazyScreen(() => import('../screens/two-ways/working').then((m) => m.TwoWaysWorking)),
};

/** Finding something; who wrote what when, of one thing; and checking the book. */
const histories = {
  find: lazyScreen(() => import('../screens/find/find').then((m) => m.FindScreen)),
  batch: lazyScreen(() => import('../screens/batches/history').then((m) => m.BatchHistory)),
  container: lazyScreen(() => import('../screens/containers/history').then((m) => m.ContainerHistory)),
  treatment: lazyScreen(() => import('../screens/treatment/history').then((m) => m.TreatmentHistory)),
  handOver: lazyScreen(() => import('../screens/hand-overs/history').then((m) => m.HandOverHistory)),
  all: lazyScreen(() => import('../screens/record/history').then((m) => m.HistoryScreen)),
  verify: lazyScreen(() => import('../screens/record/verify').then((m) => m.VerifyScreen)),
};

/** From the choice of what leaves to a finished set: what the laws make of it comes with the check. */
const papers = {
  choose: lazyScreen(() => import('../screens/papers/choose').then((m) => m.ChooseSet)),
  check: lazyScreen(() => import('../screens/papers/check').then((m) => m.CheckSet)),
  sign: lazyScreen(() => import('../screens/papers/sign').then((m) => m.SignSet)),
};

/** The register of a period, and whether a file is still as it was made. */
const register = {
  make: withWhole(lazyScreen(() => import('../screens/register/new').then((m) => m.NewRegister))),
  check: lazyScreen(() => import('../screens/register/check').then((m) => m.CheckFileScreen)),
};

/** Labels, and reading them: the camera comes only when it is asked for. */
const labels = {
  make: lazyScreen(() => import('../screens/labels/new').then((m) => m.NewLabels)),
  scan: lazyScreen(() => import('../screens/scan/scan').then((m) => m.ScanScreen)),
};

/** What the laws make of a container: their tables come with the first of these pages. */
const candidates = {
  all: lazyScreen(() => import('../screens/candidates/candidates').then((m) => m.CandidatesScreen)),
  one: lazyScreen(() => import('../screens/candidates/candidate').then((m) => m.CandidateScreen)),
  said: lazyScreen(() => import('../screens/candidates/said').then((m) => m.SaidScreen)),
  another: lazyScreen(() => import('../screens/candidates/said').then((m) => m.AnotherScreen)),
  working: lazyScreen(() => import('../screens/candidates/working').then((m) => m.CandidateWorking)),
};

/** What left with whom, and the proof of it: most visits see none of it. */
const handOvers = {
  all: lazyScreen(() => import('../screens/hand-overs/list').then((m) => m.HandOverList)),
  make: lazyScreen(() => import('../screens/hand-overs/new').then((m) => m.NewHandOver)),
  one: lazyScreen(() => import('../screens/hand-overs/hand-over').then((m) => m.HandOverScreen)),
  proof: lazyScreen(() => import('../screens/hand-overs/proof').then((m) => m.FileProof)),
  back: lazyScreen(() => import('../screens/hand-overs/back').then((m) => m.LoadBack)),
  receipt: lazyScreen(() => import('../screens/hand-overs/receipt').then((m) => m.ReceiptScreen)),
  difference: lazyScreen(() => import('../screens/hand-overs/what-left').then((m) => m.DifferenceWorking)),
};

/** The texts of all licences come with their page. */
const licences = lazyScreen(() => import('../screens/record/licences').then((m) => m.LicencesScreen));

/** The account of a year goes through the whole record. */
const year = {
  one: withWhole(lazyScreen(() => import('../screens/year/year').then((m) => m.YearScreen))),
  make: withWhole(lazyScreen(() => import('../screens/year/make').then((m) => m.MakeYear))),
  balance: withWhole(lazyScreen(() => import('../screens/year/balances').then((m) => m.BalanceScreen))),
  working: withWhole(lazyScreen(() => import('../screens/year/working').then((m) => m.YearWorking))),
};

type Route = readonly [pattern: string, screen: Screen];

const pages: readonly Route[] = [
  ['today', Today],
  ['batches', BatchList],
  ['batches/new', daily('NewBatch')],
  ['batches/:batch', daily('BatchScreen')],
  ['batches/:batch/log', daily('ChooseStream')],
  ['batches/:batch/log/:kind', daily('LogStream')],
  ['batches/:batch/account', daily('AccountForm')],
  ['batches/:batch/closure/:of', daily('ClosureScreen')],
  ['batches/:batch/closure/:of/working/:key', daily('ClosureWorking')],
  ['batches/:batch/closure/:of/working/:key/:steps', daily('ClosureWorking')],
  ['batches/:batch/look', daily('NextLook')],
  ['batches/:batch/step', daily('StepChoice')],
  ['batches/:batch/already', daily('BegunWithout')],
  ['batches/:batch/already/:list', daily('BegunWithoutList')],
  ['batches/:batch/where', daily('Where')],
  ['batches/:batch/silver-check', silver.check],
  ['batches/:batch/silver-check/working/:key', silver.working],
  ['batches/:batch/silver-check/working/:key/:steps', silver.working],
  ['batches/:batch/silver-check/:check', silver.kept],
  ['batches/:batch/dilution', daily('DilutionScreen')],
  ['batches/:batch/dilution/:key', daily('DilutionWorking')],
  ['batches/:batch/dilution/:key/:steps', daily('DilutionWorking')],
  ['batches/:batch/history', histories.batch],
  ['streams/:stream', daily('StreamScreen')],
  ['streams/:stream/working/:key', daily('StreamWorking')],
  ['streams/:stream/working/:key/:steps', daily('StreamWorking')],
  ['streams/:stream/found-later', life.foundLater],
  ['containers', ContainerList],
  ['containers/new', daily('NewContainer')],
  ['containers/found', life.found],
  ['containers/as-it-is-or-treated', twoWays.all],
  ['containers/as-it-is-or-treated/:key', twoWays.working],
  ['containers/as-it-is-or-treated/:key/:steps', twoWays.working],
  ['containers/new/for/:stream', daily('NewContainer')],
  ['containers/new/from/:from', daily('NewContainer')],
  ['containers/new/instead/:instead', daily('NewContainer')],
  ['containers/:id', daily('ContainerScreen')],
  ['containers/:id/in', daily('PutIn')],
  ['containers/:id/in/:stream', daily('PlaceStream')],
  ['containers/:id/out', daily('TakeOut')],
  ['containers/:id/more', daily('MoreOfContainer')],
  ['containers/:id/mark/:mark', daily('MarkScreen')],
  ['containers/:id/move-all', daily('MoveAll')],
  ['containers/:id/history', histories.container],
  ['containers/:id/unknown', life.unknown],
  ['containers/:id/what-it-is', life.whatItIs],
  ['containers/:id/change', life.change],
  ['containers/:id/level', life.level],
  ['containers/:id/level/why', life.levelWhy],
  ['containers/:id/level/entry', life.whichEntry],
  ['containers/:id/water', life.water],
  ['containers/:id/lab-report', life.labReport],
  ['containers/:id/meets', daily('MeetsScreen')],
  ['containers/:id/label', labels.make],
  ['containers/:id/candidates', candidates.all],
  ['containers/:id/candidates/another', candidates.another],
  ['containers/:id/candidates/:scheme/:code', candidates.one],
  ['containers/:id/candidates/:scheme/:code/said', candidates.said],
  ['containers/:id/candidates/:scheme/:code/working/:key', candidates.working],
  ['containers/:id/candidates/:scheme/:code/working/:key/:steps', candidates.working],
  ['meets', daily('MeetsScreen')],
  ['containers/:id/base/:base', daily('ContainerBase')],
  ['containers/:id/washing', daily('WashingScreen')],
  ['containers/:id/washing/:key', daily('WashingWorking')],
  ['containers/:id/washing/:key/:steps', daily('WashingWorking')],
  ['containers/:id/iron', daily('IronScreen')],
  ['containers/:id/iron/:key', daily('IronWorking')],
  ['containers/:id/iron/:key/:steps', daily('IronWorking')],
  ['containers/:id/treatment', treatment.choice],
  ['containers/:id/treatment/ph', treatment.whichPh],
  ['containers/:id/treatment/plan', treatment.plan],
  ['containers/:id/treatment/working/:key', treatment.working],
  ['containers/:id/treatment/working/:key/:steps', treatment.working],
  ['containers/:id/bench-test', run.bench],
  ['containers/:id/bench-test/:key', run.benchWorking],
  ['containers/:id/bench-test/:key/:steps', run.benchWorking],
  ['treatment/begin', run.choose],
  ['treatment/begin/:container', run.begin],
  ['treatment/begin/:container/already', run.already],
  ['treatment/:treatment', run.page],
  ['treatment/:treatment/history', histories.treatment],
  ['treatment/:treatment/dose', run.dose],
  ['treatment/:treatment/reading', run.reading],
  ['treatment/:treatment/end', run.end],
  ['treatment/:treatment/working/:key', run.working],
  ['treatment/:treatment/working/:key/:steps', run.working],
  ['containers/:id/as-it-is-or-treated', twoWays.one],
  ['containers/:id/as-it-is-or-treated/:key', twoWays.working],
  ['containers/:id/as-it-is-or-treated/:key/:steps', twoWays.working],
  ['containers/:id/working/:key', daily('ContainerWorking')],
  ['containers/:id/working/:key/:steps', daily('ContainerWorking')],
  ['start', WelcomeScreen],
  ['start/workshop', daily('StartWorkshopScreen')],
  ['start/people', daily('StartPeopleScreen')],
  ['start/rules', daily('StartRulesScreen')],
  ['papers', daily('PaperList')],
  ['papers/new', papers.choose],
  ['papers/new/:set', papers.check],
  ['papers/new/:set/sign', papers.sign],
  ['papers/register', register.make],
  ['papers/labels', labels.make],
  ['papers/year', year.one],
  ['papers/year/:year', year.one],
  ['papers/year/:year/paper', year.make],
  ['papers/year/:year/of/:of', year.balance],
  ['papers/year/:year/working/:key', year.working],
  ['papers/year/:year/working/:key/:steps', year.working],
  ['find', histories.find],
  ['scan', labels.scan],
  ['hand-overs', handOvers.all],
  ['hand-overs/new', handOvers.make],
  ['hand-overs/new/:of', handOvers.make],
  ['hand-overs/:id', handOvers.one],
  ['hand-overs/:id/history', histories.handOver],
  ['hand-overs/:id/proof', handOvers.proof],
  ['hand-overs/:id/back', handOvers.back],
  ['hand-overs/:id/receipt', handOvers.receipt],
  ['hand-overs/:id/difference/:container', handOvers.difference],
  ['hand-overs/:id/difference/:container/:steps', handOvers.difference],
  ['record', RecordScreen],
  ['record/workshop', daily('WorkshopScreen')],
  ['record/holder', daily('HolderScreen')],
  ['record/people', daily('PeopleScreen')],
  ['record/people/:person', daily('PersonScreen')],
  ['record/rules', daily('RulesScreen')],
  ['record/rules/:rule', daily('RuleScreen')],
  ['record/bases', daily('BasesScreen')],
  ['record/bases/:base', daily('BaseScreen')],
  ['record/lists', daily('ListsScreen')],
  ['record/lists/:list', daily('ListScreen')],
  ['record/lists/:list/add', daily('AddScreen')],
  ['record/lists/:list/:item', daily('ListItemScreen')],
  ['record/lists/:list/:item/range', daily('RangeScreen')],
  ['record/lists/:list/:item/drop', daily('DropScreen')],
  ['record/stations', stations.list],
  ['record/stations/new', stations.form],
  ['record/stations/new/for/:page/:for/:list', stations.form],
  ['record/stations/:station', stations.one],
  ['record/stations/:station/change', stations.form],
  ['record/stations/:station/measured', stations.measured],
  ['record/stations/:station/working/:key', stations.working],
  ['record/stations/:station/working/:key/:steps', stations.working],
  ['ventilation/:for/:list', ventilation.check],
  ['ventilation/:for/:list/working/:key', ventilation.working],
  ['ventilation/:for/:list/working/:key/:steps', ventilation.working],
  ['ventilation-checks/:check', ventilation.kept],
  ['ventilation-checks/:check/working/:key', ventilation.keptWorking],
  ['ventilation-checks/:check/working/:key/:steps', ventilation.keptWorking],
  ['photos/:hash', daily('PhotoScreen')],
  ['record/reading', daily('ReadingScreen')],
  ['record/history', histories.all],
  ['record/verify', histories.verify],
  ['record/check', register.check],
  ['record/backup', backups.make],
  ['record/restore', backups.restore],
  ['record/entry/:entry', daily('EntryScreen')],
  ['record/entry/:entry/correct', withEntry(daily('CorrectScreen'))],
  ['record/entry/:entry/withdraw', withEntry(daily('WithdrawScreen'))],
  ['record/lock', daily('LockSettings')],
  ['record/demo', daily('DemoScreen')],
  ['record/demo/remove', daily('DemoRemoveScreen')],
  ['record/demo/removed', daily('DemoRemovedScreen')],
  ['record/demo/not-removed', daily('DemoNotRemovedScreen')],
  ['record/about', daily('AboutScreen')],
  ['record/about/licences', licences],
  ['record/keeping', daily('KeepingScreen')],
  ['record/not-whole', NotWholeScreen],
  ['record/not-whole/go-on', GoOnScreen],
  ['check/:for/:list', daily('RunList')],
  ['later/:entry/:item', withEntry(daily('Later'))],
  ['clearance/:entry', withEntry(daily('Clearance'))],
  ['clearance/:entry/message', withEntry(daily('MessageScreen'))],
  ['walk', daily('WalkScreen')],
  ['walk/:container', daily('LookScreen')],
  ['walk/done/:walk', daily('WalkEnd')],
  ['findings/:finding', daily('FindingScreen')],
  ['findings/:finding/done', daily('CloseFinding')],
  ['due', due.all],
  ['due/days/:kind', due.day],
  ['due/days/:kind/:of', due.day],
  ['due/months', due.months],
  ['due/months/:month', due.month],
  ['due/months/:month/working', due.monthWorking],
  ['due/months/:month/working/:steps', due.monthWorking],
  ['due/wastes/:stream', due.waste],
  ['due/wastes/:stream/working', due.wasteWorking],
  ['due/wastes/:stream/working/:steps', due.wasteWorking],
  ['due/on-site', due.onSite],
  ['due/on-site/working', due.onSiteWorking],
  ['due/on-site/working/:steps', due.onSiteWorking],
  ['due/near-work', due.nearWork],
  ['due/near-work/working', due.nearWorkWorking],
  ['due/near-work/working/:steps', due.nearWorkWorking],
  ['due/calendar', due.calendar],
  ['clocks', daily('ClocksScreen')],
  ['clocks/:clock', daily('ClockScreen')],
  ['sos', Sos],
  ['sos/:card', Sos],
  ['sos/:card/then/:then', Sos],
];

/** Each needs what its address names; but a history is read entry by entry. */
const routes = pages.map(
  ([pattern, screen]): Route => [
    pattern,
    !pattern.includes(':') || pattern.endsWith('/history') ? screen : withNamed(screen),
  ],
);

function match(pattern: string, path: readonly string[]): Record<string, string> | null {
  const parts = pattern.split('/');
  if (parts.length !== path.length) return null;
  const found: Record<string, string> = {};
  for (const [i, part] of parts.entries()) {
    const given = path[i] ?? '';
    if (part.startsWith(':')) found[part.slice(1)] = given;
    else if (part !== given) return null;
  }
  return found;
}

/** The screen at an address with the parts it named; null where there is none. */
export function screenAt(path: readonly string[]): { screen: Screen; at: Record<string, string> } | null {
  for (const [pattern, screen] of routes) {
    const at = match(pattern, path);
    if (at) return { screen, at };
  }
  return null;
}

/** What works without an open record: emergency cards, taking out what is there, and bringing a backup in. */
export const opensAnyway = ([place, part]: readonly string[]): boolean =>
  place === 'sos' || (place === 'record' && (part === 'backup' || part === 'restore'));
