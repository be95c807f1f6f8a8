/** Which screen stands at which address. The first pattern that fits wins; ":" takes any part and hands it over. */
import type { ComponentType } from 'preact';
import { MeetsScreen } from '../screens/apart/meets';
import { AccountForm } from '../screens/batches/account-form';
import { BatchScreen } from '../screens/batches/batch';
import { ChooseStream } from '../screens/batches/choose-stream';
import { ClosureScreen, ClosureWorking } from '../screens/batches/closure';
import { BatchList } from '../screens/batches/list';
import { LogStream } from '../screens/batches/log';
import { NewBatch } from '../screens/batches/new';
import { StreamScreen, StreamWorking } from '../screens/batches/stream';
import { BegunWithout, BegunWithoutList } from '../screens/checklist/begun-without';
import { Clearance } from '../screens/checklist/clearance';
import { Later } from '../screens/checklist/later';
import { RunList } from '../screens/checklist/run-list';
import { StepChoice } from '../screens/checklist/step-choice';
import { Where } from '../screens/checklist/where';
import { ClockScreen } from '../screens/clocks/clock';
import { ClocksScreen } from '../screens/clocks/clocks';
import { NextLook } from '../screens/clocks/look';
import { MessageScreen } from '../screens/clocks/message';
import { BaseScreen as ContainerBase } from '../screens/containers/base';
import { ContainerScreen } from '../screens/containers/container';
import { ContainerList } from '../screens/containers/list';
import { MarkScreen } from '../screens/containers/mark';
import { MoreOfContainer } from '../screens/containers/more';
import { MoveAll } from '../screens/containers/move-all';
import { NewContainer } from '../screens/containers/new';
import { PlaceStream, PutIn } from '../screens/containers/put-in';
import { TakeOut } from '../screens/containers/take-out';
import { ContainerWorking } from '../screens/containers/working';
import { DilutionScreen } from '../screens/dilution/dilution';
import { DilutionWorking } from '../screens/dilution/working';
import { CloseFinding, FindingScreen } from '../screens/findings/finding';
import { IronScreen } from '../screens/iron/iron';
import { IronWorking } from '../screens/iron/working';
import { GoOnScreen } from '../screens/keeping/go-on';
import { KeepingScreen } from '../screens/keeping/keeping';
import { NotWholeScreen } from '../screens/keeping/not-whole';
import { AddScreen } from '../screens/lists/add';
import { DropScreen } from '../screens/lists/drop';
import { ListItemScreen } from '../screens/lists/item';
import { ListScreen } from '../screens/lists/list';
import { ListsScreen } from '../screens/lists/lists';
import { RangeScreen } from '../screens/lists/range';
import { LockSettings } from '../screens/lock/settings';
import { PaperList } from '../screens/papers/list';
import { PhotoScreen } from '../screens/photos/photo';
import { AboutScreen } from '../screens/record/about';
import { BaseScreen } from '../screens/record/base';
import { BasesScreen } from '../screens/record/bases';
import { CorrectScreen } from '../screens/record/correct';
import {
  DemoNotRemovedScreen,
  DemoRemovedScreen,
  DemoRemoveScreen,
  DemoScreen,
} from '../screens/record/demo';
import { EntryScreen } from '../screens/record/entry';
import { PeopleScreen } from '../screens/record/people';
import { PersonScreen } from '../screens/record/person';
import { RecordScreen } from '../screens/record/place';
import { ReadingScreen } from '../screens/record/reading';
import { RuleScreen } from '../screens/record/rule';
import { RulesScreen } from '../screens/record/rules';
import { WithdrawScreen } from '../screens/record/withdraw';
import { WorkshopScreen } from '../screens/record/workshop';
import { Sos } from '../screens/sos/sos';
import { StartPeopleScreen } from '../screens/start/people';
import { StartRulesScreen } from '../screens/start/rules';
import { WelcomeScreen } from '../screens/start/welcome';
import { StartWorkshopScreen } from '../screens/start/workshop';
import { Today } from '../screens/today/today';
import { WalkEnd } from '../screens/walk/end';
import { LookScreen, WalkScreen } from '../screens/walk/walk';
import { WashingScreen } from '../screens/washing/washing';
import { WashingWorking } from '../screens/washing/working';
import { withBatch, withEntry, withMonth, withWhole } from '../screens/with-whole';
import { lazyScreen } from './lazy-screen';

/** A screen is given the parts of the address that its pattern named. */
export type Screen = ComponentType<{ readonly at: Readonly<Record<string, string>> }>;

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
  foundLater: withBatch(lazyScreen(() => import('../screens/batches/found-later').then((m) => m.FoundLater))),
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

const ofBatch: readonly Route[] = [
  ['batches/:batch', BatchScreen],
  ['batches/:batch/log', ChooseStream],
  ['batches/:batch/log/:stream', LogStream],
  ['batches/:batch/account', AccountForm],
  ['batches/:batch/closure/:of', ClosureScreen],
  ['batches/:batch/closure/:of/working/:key', ClosureWorking],
  ['batches/:batch/closure/:of/working/:key/:steps', ClosureWorking],
  ['batches/:batch/look', NextLook],
  ['batches/:batch/step', StepChoice],
  ['batches/:batch/already', BegunWithout],
  ['batches/:batch/already/:list', BegunWithoutList],
  ['batches/:batch/where', Where],
  ['batches/:batch/silver-check', silver.check],
  ['batches/:batch/silver-check/working/:key', silver.working],
  ['batches/:batch/silver-check/working/:key/:steps', silver.working],
  ['batches/:batch/silver-check/:check', silver.kept],
  ['batches/:batch/dilution', DilutionScreen],
  ['batches/:batch/dilution/:key', DilutionWorking],
  ['batches/:batch/dilution/:key/:steps', DilutionWorking],
];

const routes: readonly Route[] = [
  ['today', Today],
  ['batches', BatchList],
  ['batches/new', NewBatch],
  ...ofBatch.map(([pattern, screen]): Route => [pattern, withBatch(screen)]),
  ['batches/:batch/history', histories.batch],
  ['streams/:stream', StreamScreen],
  ['streams/:stream/working/:key', StreamWorking],
  ['streams/:stream/working/:key/:steps', StreamWorking],
  ['streams/:stream/found-later', life.foundLater],
  ['containers', ContainerList],
  ['containers/new', NewContainer],
  ['containers/found', life.found],
  ['containers/as-it-is-or-treated', twoWays.all],
  ['containers/as-it-is-or-treated/:key', twoWays.working],
  ['containers/as-it-is-or-treated/:key/:steps', twoWays.working],
  ['containers/new/for/:stream', NewContainer],
  ['containers/new/from/:from', NewContainer],
  ['containers/new/instead/:instead', NewContainer],
  ['containers/:id', ContainerScreen],
  ['containers/:id/in', PutIn],
  ['containers/:id/in/:stream', PlaceStream],
  ['containers/:id/out', TakeOut],
  ['containers/:id/more', MoreOfContainer],
  ['containers/:id/mark/:mark', MarkScreen],
  ['containers/:id/move-all', MoveAll],
  ['containers/:id/history', histories.container],
  ['containers/:id/unknown', life.unknown],
  ['containers/:id/what-it-is', life.whatItIs],
  ['containers/:id/change', life.change],
  ['containers/:id/level', life.level],
  ['containers/:id/level/why', life.levelWhy],
  ['containers/:id/level/entry', life.whichEntry],
  ['containers/:id/water', life.water],
  ['containers/:id/lab-report', life.labReport],
  ['containers/:id/meets', MeetsScreen],
  ['containers/:id/label', labels.make],
  ['containers/:id/candidates', candidates.all],
  ['containers/:id/candidates/another', candidates.another],
  ['containers/:id/candidates/:scheme/:code', candidates.one],
  ['containers/:id/candidates/:scheme/:code/said', candidates.said],
  ['containers/:id/candidates/:scheme/:code/working/:key', candidates.working],
  ['containers/:id/candidates/:scheme/:code/working/:key/:steps', candidates.working],
  ['meets', MeetsScreen],
  ['containers/:id/base/:base', ContainerBase],
  ['containers/:id/washing', WashingScreen],
  ['containers/:id/washing/:key', WashingWorking],
  ['containers/:id/washing/:key/:steps', WashingWorking],
  ['containers/:id/iron', IronScreen],
  ['containers/:id/iron/:key', IronWorking],
  ['containers/:id/iron/:key/:steps', IronWorking],
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
  ['containers/:id/working/:key', ContainerWorking],
  ['containers/:id/working/:key/:steps', ContainerWorking],
  ['start', WelcomeScreen],
  ['start/workshop', StartWorkshopScreen],
  ['start/people', StartPeopleScreen],
  ['start/rules', StartRulesScreen],
  ['papers', PaperList],
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
  ['record/workshop', WorkshopScreen],
  ['record/people', PeopleScreen],
  ['record/people/:person', PersonScreen],
  ['record/rules', RulesScreen],
  ['record/rules/:rule', RuleScreen],
  ['record/bases', BasesScreen],
  ['record/bases/:base', BaseScreen],
  ['record/lists', ListsScreen],
  ['record/lists/:list', ListScreen],
  ['record/lists/:list/add', AddScreen],
  ['record/lists/:list/:item', ListItemScreen],
  ['record/lists/:list/:item/range', RangeScreen],
  ['record/lists/:list/:item/drop', DropScreen],
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
  ['photos/:hash', PhotoScreen],
  ['record/reading', ReadingScreen],
  ['record/history', histories.all],
  ['record/verify', histories.verify],
  ['record/check', register.check],
  ['record/backup', backups.make],
  ['record/restore', backups.restore],
  ['record/entry/:entry', EntryScreen],
  ['record/entry/:entry/correct', withEntry(CorrectScreen)],
  ['record/entry/:entry/withdraw', withEntry(WithdrawScreen)],
  ['record/lock', LockSettings],
  ['record/demo', DemoScreen],
  ['record/demo/remove', DemoRemoveScreen],
  ['record/demo/removed', DemoRemovedScreen],
  ['record/demo/not-removed', DemoNotRemovedScreen],
  ['record/about', AboutScreen],
  ['record/about/licences', licences],
  ['record/keeping', KeepingScreen],
  ['record/not-whole', NotWholeScreen],
  ['record/not-whole/go-on', GoOnScreen],
  ['check/:for/:list', RunList],
  ['later/:entry/:item', Later],
  ['clearance/:entry', Clearance],
  ['clearance/:entry/message', MessageScreen],
  ['walk', WalkScreen],
  ['walk/:container', LookScreen],
  ['walk/done/:walk', WalkEnd],
  ['findings/:finding', FindingScreen],
  ['findings/:finding/done', CloseFinding],
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
  ['clocks', ClocksScreen],
  ['clocks/:clock', ClockScreen],
  ['sos', Sos],
  ['sos/:card', Sos],
  ['sos/:card/then/:then', Sos],
];

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
