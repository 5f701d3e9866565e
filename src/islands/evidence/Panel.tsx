/** One panel under the figure: a heading, and for each band of loads what there is to see or why there is nothing. */
import type { ComponentChildren } from 'preact';
import type { BandChecks } from '../../model/full.ts';
import type { Band, BandName } from '../../model/result.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { useTurn } from '../../ui/inTurn.ts';

export interface BandView {
  readonly name: BandName;
  readonly band: Band;
}

interface PanelProps<View extends BandView> {
  readonly title: string;
  readonly views: readonly View[];
  readonly children: (view: View) => ComponentChildren;
}

export function EvidencePanel<View extends BandView>({ title, views, children }: PanelProps<View>) {
  return (
    <Frame title={title} views={views}>
      {(view) => (view.band.failure ? <p>Nothing to show: {view.band.failure.reason}.</p> : children(view))}
    </Frame>
  );
}

interface CheckedPanelProps {
  readonly title: string;
  readonly views: readonly (BandView & { readonly checks: BandChecks | null })[];
  /** True while the checks are being made. */
  readonly isWaiting: boolean;
  /** Why there are none; null where there are. */
  readonly problem: string | null;
  readonly children: (view: BandView & { readonly checks: BandChecks }) => ComponentChildren;
}

/** A panel of what takes longer than the fit. */
export function CheckedPanel({ title, views, isWaiting, problem, children }: CheckedPanelProps) {
  // All panels at once would hold the page up.
  const isShown = useTurn(views[0]?.checks ?? null);
  const isBusy = isWaiting || (!isShown && problem === null);
  return (
    <Frame title={title} views={views} isBusy={isBusy}>
      {({ checks, ...view }) => {
        if (isBusy) return <p class="small">Being worked out …</p>;
        if (problem !== null) return <p>Not worked out: {problem}</p>;
        if (view.band.failure) return <p>Nothing to show: {view.band.failure.reason}.</p>;
        return checks && children({ ...view, checks });
      }}
    </Frame>
  );
}

interface FrameProps<View extends BandView> extends PanelProps<View> {
  readonly isBusy?: boolean;
}

function Frame<View extends BandView>({ title, views, isBusy, children }: FrameProps<View>) {
  return (
    <section class="panel" aria-busy={isBusy}>
      <h2>{title}</h2>
      <div class="pair">
        {views.map((view) => (
          <div key={view.name}>
            <h3 class={view.name === 'light' ? 'light-load' : 'heavy-load'}>{LOAD_HEADINGS[view.name]}</h3>
            {children(view)}
          </div>
        ))}
      </div>
    </section>
  );
}
