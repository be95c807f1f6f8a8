/** The record: whether it is kept and whole, and the rows to everything that is set or looked up rarely. */
import { hoodsDue } from '../../ledger/hoods-due';
import { changedLists } from '../../ledger/workshop-lists';
import { baseIds } from '../../reference/tables';
import { dayField } from '../../safety/stated-time';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { apartWords } from '../apart/words';
import { BackupRows } from '../backup/rows';
import { TellRow } from '../clocks/tell-row';
import { dueWords } from '../due/words';
import { findWords } from '../find/words';
import { Frame } from '../frame';
import { InstallRow, KeepingRow, MarkerRow, SpaceRow } from '../keeping/rows';
import { listsWords } from '../lists/words';
import { LockRow } from '../lock/settings';
import { registerPageWords } from '../register/words';
import { useShell } from '../shell';
import { stationWords } from '../stations/words';
import { dischargeRuleWords, ruleWords } from './rule-words';
import { verifyWords } from './verify-words';
import { Unreadable, Wholeness } from './wholeness';
import { readingWords, recordWords as w } from './words';

export function RecordScreen() {
  const { state, person, sign, theme, record, now, trouble } = useShell();
  const { workshop, people, rules, bases } = state.value;
  const holder = person.value === null ? undefined : people.get(person.value)?.body.name;
  const present = [...people.values()].filter(({ leftAt }) => leftAt === null).length;
  const stated = baseIds.filter((base) => bases.has(base)).length;
  const lists = [...changedLists(state.value).values()];
  const own = new Set(state.value.listChanges.map(({ body }) => body.change.list)).size;
  const used = [...state.value.stations.values()].filter(({ givenUpAt }) => givenUpAt === null).length;
  const due = hoodsDue(state.value, dayField(now.value)).length;
  const stationsSecond = [stationWords.inUse(used), ...(due > 0 ? [stationWords.dueOf(due)] : [])].join(', ');
  const reads = [
    sign.value === ',' ? readingWords.shortComma : readingWords.shortPoint,
    readingWords[theme.value].toLowerCase(),
  ] as const;
  return (
    <Frame place="record" title={w.title} second={workshop?.body.name ?? w.noWorkshop}>
      <Part rule width="edge">
        <Rows>
          <Unreadable />
          {/* What is wrong stands over every page then. */}
          {trouble.value.length === 0 && <Wholeness />}
          <KeepingRow />
          <MarkerRow />
          <InstallRow />
          <SpaceRow />
          <BackupRows />
        </Rows>
      </Part>
      <Part rule width="edge" title={w.parts.here}>
        <Rows>
          <Row title={dueWords.title} second={dueWords.rowSecond} href="#/due" />
          <Row title={w.rows.workshop} second={w.second.workshop} href="#/record/workshop" />
          <Row title={w.rows.people} second={w.second.people(present, holder)} href="#/record/people" />
          <Row
            title={w.rows.rules}
            second={w.second.rules(rules.size, Object.keys({ ...ruleWords, ...dischargeRuleWords }).length)}
            href="#/record/rules"
          />
          <Row title={listsWords.title} second={w.second.lists(lists.length, own)} href="#/record/lists" />
          <Row title={stationWords.title} second={stationsSecond} href="#/record/stations" />
          <Row title={w.rows.bases} second={w.second.bases(stated, baseIds.length)} href="#/record/bases" />
        </Rows>
      </Part>
      <Part rule width="edge" title={w.parts.book}>
        <Rows>
          <Row title={apartWords.title} second={apartWords.lookUpSecond} href="#/meets" />
          <Row title={findWords.title} second={findWords.second} href="#/find" />
          <Row title={w.rows.history} second={w.second.history} href="#/record/history" />
          <Row title={verifyWords.title} second={verifyWords.second} href="#/record/verify" />
          <Row
            title={registerPageWords.checkTitle}
            second={registerPageWords.checkSecond}
            href="#/record/check"
          />
          <Row title={w.rows.reading} second={w.second.reading(...reads)} href="#/record/reading" />
          <TellRow />
          <LockRow />
          <Row
            title={w.rows.demo}
            second={record === 'demo' ? w.second.inDemo : w.second.demo}
            href="#/record/demo"
          />
          <Row title={w.rows.about} second={w.second.about} href="#/record/about" />
        </Rows>
      </Part>
    </Frame>
  );
}
