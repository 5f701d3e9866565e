/** Says what one more study would do to the answer of a table; `npm run plan -- --help` says how. */
import { findBestPlacement } from '../src/model/plan/bestPlacement.ts';
import { expectPlan } from '../src/model/plan/expectPlan.ts';
import { findPeople } from '../src/model/plan/peopleNeeded.ts';
import { openPlanning } from '../src/model/plan/planningBase.ts';
import { CallError, runScript } from './terminal/call.ts';
import { type PlanCall, readPlan } from './terminal/planCall.ts';
import { statePeople, statePlacements, statePlan } from './terminal/planReport.ts';
import { readSettings, SETTINGS_HELP } from './terminal/settings.ts';
import { readTableFile, TABLE_HELP, TABLE_OPTIONS } from './terminal/table.ts';

const HELP = `usage: npm run plan -- TABLE --arm LOAD:RESERVE:PEOPLE [--arm …] [--width WIDTH] [--json]
       npm run plan -- TABLE --best ARMS --people PEOPLE [--band BAND] [--json]

Says what one more study of these arms is expected to do to the target's interval in each band of loads; or tries every
way of placing two or three arms on whole reserves and says the best. It judges neither ethics nor safety.

  --arm LOAD:RESERVE:PEOPLE   an arm: light, heavy, all or per cent of 1RM; repetitions in reserve; people (light:0:10)
  --design NAME         parallel (other people in every arm, the default) or within-person (other limbs of the same)
  --weeks, --measure    length of the training and what is measured; the table's usual ones by default
  --cv, --correlation   spread before training as a share of the mean, and correlation of before with after; else usual ones
  --width WIDTH         people that such arms need for an interval no wider than this, in repetitions
  --best ARMS           1, 2 or 3 arms, shared equally by --people; in the band of --band, or in all
${SETTINGS_HELP}
  --json                prints everything as JSON
${TABLE_HELP}

Exit code 0: worked out. 1: the table, the settings or the plan have problems. 2: wrong call.`;

const form = {
  help: HELP,
  options: {
    arm: { type: 'string', multiple: true, default: [] as string[] },
    design: { type: 'string' },
    weeks: { type: 'string' },
    measure: { type: 'string' },
    cv: { type: 'string' },
    correlation: { type: 'string' },
    width: { type: 'string' },
    best: { type: 'string' },
    people: { type: 'string' },
    band: { type: 'string' },
    settings: { type: 'string' },
    json: { type: 'boolean', default: false },
    ...TABLE_OPTIONS,
  },
  files: { counts: [1], expected: 'one table file' },
} as const;

runScript(form, async ({ values, files: [file] }) => {
  const call = readPlan(values);
  const settings = readSettings(values.settings);
  const { arms, problems, problemLines, notes, warningLines } = await readTableFile(file, 'table', values);
  for (const note of notes) console.error(`note: ${note}`);
  for (const warning of warningLines) console.error(`warning: ${warning}`);
  if (problems.length > 0) {
    throw new CallError(
      [...problemLines, `${problems.length} problem(s) in ${file}; nothing was planned`].join('\n'),
      1,
    );
  }
  const planning = openPlanning(arms, settings);
  const result = answer(call);
  console.log(values.json ? JSON.stringify(result.data, null, 2) : result.text);

  function answer({ plan, width, best }: PlanCall) {
    if (best) {
      const search = findBestPlacement(planning, { ...best, design: plan.design, furthest: null, study: plan });
      if (search.reason !== null) throw new CallError(`plan: ${search.reason}`, 1);
      return { data: search, text: statePlacements(search) };
    }
    const expected = expectPlan(planning, plan);
    if (expected.problems.length > 0) throw new CallError(expected.problems.map((one) => `plan: ${one}`).join('\n'), 1);
    if (width === null) return { data: expected, text: statePlan(expected) };
    const asked = expected.bands.filter(({ arms: count }) => count > 0);
    const people = asked.map(({ band }) => findPeople(planning, plan, band, width));
    return {
      data: { ...expected, peopleNeeded: people },
      text: [statePlan(expected), ...people.map(statePeople)].join('\n'),
    };
  }
});
