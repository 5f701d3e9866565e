/** The pictures of a programme, with all that draws them: loaded once the page stands. */
import { useMemo, useRef } from 'preact/hooks';
import { programmeByWeek } from '../../figures/programmeByWeek.ts';
import { recoveryCalendar } from '../../figures/recoveryCalendar.ts';
import type { VersionWeeks } from '../../figures/weekData.ts';
import type { PracticeAnalysis } from '../../model/full.ts';
import type { Calendar, Session } from '../../practice/programme/sessions.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import { saveFile } from '../../ui/saveFile.ts';

export interface CalendarPictureProps {
  readonly sessions: readonly Session[];
  readonly by: PracticeAnalysis;
  readonly calendar: Calendar;
  /** Week that is drawn; null for all. */
  readonly week: number | null;
}

export function CalendarPicture({ sessions, by, calendar, week }: CalendarPictureProps) {
  const figure = useMemo(
    () => recoveryCalendar(sessions, by, { calendar, ...(week === null ? {} : { week }) }),
    [sessions, by, calendar, week],
  );
  return <FigureView figure={figure} heading="h3" />;
}

export interface WeeksPictureProps {
  readonly versions: readonly VersionWeeks[];
  readonly by: PracticeAnalysis;
  readonly calendar: Calendar;
}

/** Widths, pixels, between which the picture fits itself to its place. */
const NARROWEST = 288;
const WIDEST = 860;

export function WeeksPicture({ versions, by, calendar }: WeeksPictureProps) {
  const frame = useRef<HTMLDivElement>(null);
  const room = frame.current?.clientWidth ?? document.querySelector('.programme')?.clientWidth ?? WIDEST;
  const width = Math.min(WIDEST, Math.max(NARROWEST, room));
  const figure = useMemo(() => programmeByWeek(versions, by, { calendar, width }), [versions, by, calendar, width]);
  const save = async () => {
    const { writePlotted } = await import('../../figures/plotted.ts');
    saveFile({ name: 'programme-by-week.csv', type: 'text/csv;charset=utf-8', text: writePlotted(figure.plot, null) });
  };
  return (
    <div ref={frame}>
      <FigureView figure={figure} heading="h3" />
      <p class="entry buttons">
        <button type="button" class="inline" onClick={() => void save()}>
          Save what is drawn as CSV
        </button>
      </p>
    </div>
  );
}
