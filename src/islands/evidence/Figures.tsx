/** The figures of the Evidence page: growth against reserve of each band, and beside each that of what is pinned. */
import { type ComponentChildren, Fragment } from 'preact';
import { useMemo } from 'preact/hooks';
import { growthByReserve } from '../../figures/growthByReserve.ts';
import { pointOut } from '../../figures/pointOut.ts';
import { findBand, listBands } from '../../model/bands.ts';
import type { Analysis, BandName } from '../../model/result.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { FigureView } from '../../ui/FigureView.tsx';
import type { EvidenceState } from './evidence.state.ts';

export type DrawnFigures = Readonly<Partial<Record<BandName, ComponentChildren>>>;

interface Props {
  readonly state: EvidenceState;
  /** As the build drew them. */
  readonly drawn: DrawnFigures;
}

export function EvidenceFigures({ state, drawn }: Props) {
  const { fitting, comparison, guide } = state;
  const analysis = fitting.analysis.value;
  const pin = comparison.pin.value;
  const pinned = pin?.analysis ?? undefined;
  const former = comparison.former.value;
  const showsNewStudy = comparison.showsNewStudy.value;
  const ringed = guide.ringed.value;
  const figures = useMemo(
    () =>
      listBands(analysis.bands).map(([band]) => ({
        band,
        figure: pointOut(
          growthByReserve(analysis, { band, former, showsNewStudy, beside: pinned ? [pinned] : [] }),
          ringed?.band === band ? ringed.spots : [],
        ),
      })),
    [analysis, former, showsNewStudy, pinned, ringed],
  );
  if (!pin) {
    // The build drew the site’s own settings, with nothing beside them and nothing pointed out.
    const isDrawn = analysis === state.start && !former && !showsNewStudy && !ringed;
    return (
      <div class="pair">
        {figures.map(({ band, figure }) => (
          <FigureView key={band} figure={figure} isDrawn={isDrawn}>
            {isDrawn ? drawn[band] : undefined}
          </FigureView>
        ))}
      </div>
    );
  }
  return (
    <>
      <p class="move-line">
        <strong>Against what is pinned.</strong> {comparison.pinLine.value}
      </p>
      <div class="pair compared">
        {bandsOfBoth(analysis, pinned).map((band) => {
          const now = figures.find((one) => one.band === band)?.figure;
          return (
            <Fragment key={band}>
              <div>
                <p class="compared-name">Now</p>
                {now ? <FigureView figure={now} /> : <Absent band={band} analysis={analysis} />}
              </div>
              <div>
                <p class="compared-name">Pinned</p>
                {pinned ? (
                  <Pinned band={band} pinned={pinned} analysis={analysis} showsNewStudy={showsNewStudy} />
                ) : (
                  <p class="small">{pin.problem === null ? 'Being fitted …' : `Not fitted: ${pin.problem}.`}</p>
                )}
              </div>
            </Fragment>
          );
        })}
      </div>
    </>
  );
}

interface PinnedProps {
  readonly band: BandName;
  readonly pinned: Analysis;
  readonly analysis: Analysis;
  readonly showsNewStudy: boolean;
}

function Pinned({ band, pinned, analysis, showsNewStudy }: PinnedProps) {
  const hasBand = findBand(pinned.bands, band) !== undefined;
  const figure = useMemo(
    () => (hasBand ? growthByReserve(pinned, { band, showsNewStudy, beside: [analysis] }) : null),
    [band, pinned, analysis, showsNewStudy, hasBand],
  );
  return figure ? <FigureView figure={figure} /> : <Absent band={band} analysis={pinned} />;
}

function Absent({ band, analysis }: { readonly band: BandName; readonly analysis: Analysis }) {
  return (
    <p class="small">
      No figure of {LOAD_NAMES[band]}: here loads are fitted {'all' in analysis.bands ? 'together' : 'apart'}.
    </p>
  );
}

function bandsOfBoth(analysis: Analysis, pinned: Analysis | undefined): readonly BandName[] {
  const names = [analysis, ...(pinned ? [pinned] : [])].flatMap(({ bands }) => listBands(bands).map(([name]) => name));
  return [...new Set(names)];
}
