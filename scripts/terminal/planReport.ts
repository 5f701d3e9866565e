/** What a planned study is expected to do, as lines of text for a terminal. */
import { formatWhole } from '../../src/figures/format.ts';
import { stateLimitWidth } from '../../src/figures/plan/limitWords.ts';
import { PER_PEOPLE, statePerPeople } from '../../src/figures/plan/planWords.ts';
import type { PlacementSearch } from '../../src/model/plan/bestPlacement.ts';
import type { ExpectedKept, ExpectedTarget } from '../../src/model/plan/expectedTarget.ts';
import type { PeopleNeeded } from '../../src/model/plan/peopleNeeded.ts';
import type { BandExpectation, PlanExpectation } from '../../src/model/plan/planExpectation.ts';
import { writePercent } from '../../src/numerics/percent.ts';

/** Whole repetitions that come out in fewer outcomes than this are not listed. */
const LEAST_SHARE = 0.05;

export function statePlan({ assumptions, people, bands }: PlanExpectation): string {
  const assumed = assumptions
    ? [
        `a study of ${people} people, ${assumptions.measure}`,
        `  coefficient of variation ${assumptions.coefficientOfVariation.value.toFixed(3)}: ${assumptions.coefficientOfVariation.words}`,
        `  correlation of before with after ${assumptions.correlation.value.toFixed(3)}: ${assumptions.correlation.words}`,
      ]
    : [];
  return [...assumed, ...bands.flatMap((band) => ['', ...stateBand(band)])].join('\n');
}

function stateBand({ band, arms, before, after, chanceOfMove, wholes, kept, reason }: BandExpectation): string[] {
  const lines = [`${band.toUpperCase()}: ${arms} planned arm(s)`, `  target today: ${stateTarget(before)}`];
  if (arms > 0 && after) {
    const told = wholes.filter(({ share }) => share >= LEAST_SHARE);
    lines.push(
      `  expected after: ${stateTarget(after)}`,
      ...kept.map(
        (one) =>
          `  growth kept at ${one.before.reserve}: ${stateKept(one.before)} today, expected ${stateKept(one.after)}`,
      ),
      `  whole repetitions change in ${writePercent(chanceOfMove ?? 0)} of outcomes: ${told.map(({ whole, share }) => `${whole ? formatWhole(whole) : 'none'} in ${writePercent(share)}`).join(', ')}`,
    );
  }
  return reason ? [...lines, `  ${reason}`] : lines;
}

function stateTarget({ point, low, high, width, refused }: ExpectedTarget): string {
  const none = refused > 0 ? `; none in ${writePercent(refused)} of outcomes` : '';
  if (point === null || low === null) return `none${refused < 1 ? none.slice(1) : ''}`;
  return `${point.toFixed(2)}, interval ${low.toFixed(2)} to ${high?.toFixed(2) ?? 'not limited'}, width ${width?.toFixed(2) ?? 'not limited'}${none}`;
}

function stateKept({ low, high }: ExpectedKept): string {
  const share = (value: number | null) => (value === null ? 'not limited' : writePercent(value));
  return `${share(low)} to ${share(high)}`;
}

export function statePeople(needed: PeopleNeeded): string {
  const { band, width, perArm, people, limit, isEnoughFromThere, reason } = needed;
  const most = limit ? `; without end of people ${stateLimitWidth(limit, needed)}` : '';
  if (perArm === null) return `${band}: ${reason}`;
  if (perArm === 0) return `${band}: no wider than ${width} today already, with nobody more${most}`;
  const how = isEnoughFromThere ? `from ${perArm} people an arm on` : `with ${perArm} people an arm`;
  const others = isEnoughFromThere ? '' : '; not every larger number that was tried is enough';
  return `${band}: no wider than ${width} ${how}, ${people} in all${others}${most}`;
}

export function statePlacements({ best, tried, reason }: PlacementSearch): string {
  if (reason) return reason;
  return [
    `the best of ${tried} ways; widths in repetitions, today to expected`,
    ...best.map(({ plan, people, bands, narrowingPerPerson }) => {
      const arms = plan.arms.map(({ load, reserve }) => `${load} ${reserve}`).join(', ');
      const widths = bands
        .map(({ band, before, after }) => `${band} ${before.width?.toFixed(2)} to ${after.width?.toFixed(2)}`)
        .join('; ');
      return `  ${arms} in reserve, ${people} people: ${widths}; ${statePerPeople(narrowingPerPerson)} for every ${PER_PEOPLE} people`;
    }),
  ].join('\n');
}
