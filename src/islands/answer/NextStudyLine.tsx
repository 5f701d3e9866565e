/** What one more study would narrow, with the way to the page where it, or another, is planned. */
import { PLAN_NAMES } from '../../figures/plan/planWords.ts';
import type { StatedNextStudy } from '../../practice/nextStudy.ts';
import { writePlan } from '../analysis/plannedStudyAddress.ts';

interface Props {
  readonly stated: StatedNextStudy;
  /** Address of the page that plans. */
  readonly planPage: string;
}

export function NextStudyLine({ stated: { words, plans }, planPage }: Props) {
  const named = plans
    .slice(0, PLAN_NAMES.length)
    .map((plan, i) => [PLAN_NAMES[i].toLowerCase(), writePlan(plan)] satisfies [string, string]);
  return (
    <>
      {words}
      {named.length > 0 && (
        <>
          {' '}
          <a href={`${planPage}?${new URLSearchParams(named)}`}>Plan it, or another</a>.
        </>
      )}
    </>
  );
}
