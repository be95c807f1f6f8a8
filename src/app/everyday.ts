/** Screens of every day, in one file that is fetched as soon as the first page stands there. */
export { MeetsScreen } from '../screens/apart/meets';
export { AccountForm } from '../screens/batches/account-form';
export { BatchScreen } from '../screens/batches/batch';
export { ChooseStream } from '../screens/batches/choose-stream';
export { ClosureScreen, ClosureWorking } from '../screens/batches/closure';
export { LogStream } from '../screens/batches/log';
export { NewBatch } from '../screens/batches/new';
export { StreamScreen, StreamWorking } from '../screens/batches/stream';
export { BegunWithout, BegunWithoutList } from '../screens/checklist/begun-without';
export { Clearance } from '../screens/checklist/clearance';
export { Later } from '../screens/checklist/later';
export { RunList } from '../screens/checklist/run-list';
export { StepChoice } from '../screens/checklist/step-choice';
export { Where } from '../screens/checklist/where';
export { ClockScreen } from '../screens/clocks/clock';
export { ClocksScreen } from '../screens/clocks/clocks';
export { NextLook } from '../screens/clocks/look';
export { MessageScreen } from '../screens/clocks/message';
export { BaseScreen as ContainerBase } from '../screens/containers/base';
export { ContainerScreen } from '../screens/containers/container';
export { MarkScreen } from '../screens/containers/mark';
export { MoreOfContainer } from '../screens/containers/more';
export { MoveAll } from '../screens/containers/move-all';
export { NewContainer } from '../screens/containers/new';
export { PlaceStream, PutIn } from '../screens/containers/put-in';
export { TakeOut } from '../screens/containers/take-out';
export { ContainerWorking } from '../screens/containers/working';
export { DilutionScreen } from '../screens/dilution/dilution';
export { DilutionWorking } from '../screens/dilution/working';
export { CloseFinding, FindingScreen } from '../screens/findings/finding';
export { IronScreen } from '../screens/iron/iron';
export { IronWorking } from '../screens/iron/working';
export { KeepingScreen } from '../screens/keeping/keeping';
export { AddScreen } from '../screens/lists/add';
export { DropScreen } from '../screens/lists/drop';
export { ListItemScreen } from '../screens/lists/item';
export { ListScreen } from '../screens/lists/list';
export { ListsScreen } from '../screens/lists/lists';
export { RangeScreen } from '../screens/lists/range';
export { LockSettings } from '../screens/lock/settings';
export { PaperList } from '../screens/papers/list';
export { PhotoScreen } from '../screens/photos/photo';
export { AboutScreen } from '../screens/record/about';
export { BaseScreen } from '../screens/record/base';
export { BasesScreen } from '../screens/record/bases';
export { CorrectScreen } from '../screens/record/correct';
export {
  DemoNotRemovedScreen,
  DemoRemovedScreen,
  DemoRemoveScreen,
  DemoScreen,
} from '../screens/record/demo';
export { EntryScreen } from '../screens/record/entry';
export { HolderScreen } from '../screens/record/holder';
export { PeopleScreen } from '../screens/record/people';
export { PersonScreen } from '../screens/record/person';
export { ReadingScreen } from '../screens/record/reading';
export { RuleScreen } from '../screens/record/rule';
export { RulesScreen } from '../screens/record/rules';
export { WithdrawScreen } from '../screens/record/withdraw';
export { WorkshopScreen } from '../screens/record/workshop';
export { StartPeopleScreen } from '../screens/start/people';
export { StartRulesScreen } from '../screens/start/rules';
export { StartWorkshopScreen } from '../screens/start/workshop';
export { WalkEnd } from '../screens/walk/end';
export { LookScreen, WalkScreen } from '../screens/walk/walk';
export { WashingScreen } from '../screens/washing/washing';
export { WashingWorking } from '../screens/washing/working';
