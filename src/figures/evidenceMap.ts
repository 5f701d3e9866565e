/**
 * The evidence map: load against reserve, a mark for each place where arms stand, sized by people, with
 * the number of arms in it; the largest empty regions outlined and numbered as the caption names them.
 */

import * as Plot from '@observablehq/plot';
import { MAPPED_LOAD, MAPPED_RESERVE } from '../model/emptyRegions.ts';
import type { EvidenceMap, MapCell } from '../model/evidenceMap.ts';
import type { BandName } from '../model/result.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { stateEmptyRegion } from './emptyRegionWords.ts';
import { describedByWords, type Figure, type FigureTable } from './figure.ts';
import { lowerFirst, upperFirst } from './firstLetter.ts';
import { FIGURE_STYLE, LOAD_LOOKS } from './looks.ts';

const WIDTH = 440;
const HEIGHT = 420;
/** Radius of the place with most people, and the least, pixels. */
const MOST_RADIUS = 13;
const LEAST_RADIUS = 3.5;
/** Per cent of 1RM above and below the map, for the names of the bands and whole marks. */
const NAME_ROOM = 6;

/** An empty region as it is drawn, with the number that the caption has. */
interface Region {
  readonly region: number;
  readonly loadFrom: number;
  readonly loadTo: number;
  readonly reserveFrom: number;
  readonly reserveTo: number;
}

/** What lies below the marks of a map and is told with it. */
export interface MapShading {
  readonly marks: readonly Plot.Markish[];
  /** Sentences, after those of the map. */
  readonly caption: string;
  /** In the place of the map's. */
  readonly table: FigureTable;
}

/** Columns of a cell in the map's table, and what stands in them. */
export const CELL_COLUMNS = ['load (% of 1RM)', 'reserve (repetitions)', 'arms', 'people', 'studies'] as const;

export function tellCell({ load, reserve, arms, people, studies }: MapCell): readonly (string | number)[] {
  return [showCell(load, MAPPED_LOAD.to), showCell(reserve, MAPPED_RESERVE.to), arms, people, studies];
}

export function evidenceMap(map: EvidenceMap, shading: MapShading | null = null): Figure {
  const furthest = map.places.reduce<number>((most, { reserve }) => Math.max(most, reserve), MAPPED_RESERVE.to);
  const lightest = map.places.reduce<number>((least, { load }) => Math.min(least, load), MAPPED_LOAD.from);
  const regions = map.regions.map(({ load, reserve }, i) => ({
    region: i + 1,
    loadFrom: load[0],
    loadTo: load[1],
    reserveFrom: reserve[0],
    reserveTo: reserve[1],
  }));
  const words = map.regions.map((region, i) => `(${i + 1}) ${stateEmptyRegion(region, map.split)}.`);
  return describedByWords({
    plot: {
      width: WIDTH,
      height: HEIGHT,
      marginLeft: 48,
      marginBottom: 44,
      marginTop: 16,
      marginRight: 16,
      style: FIGURE_STYLE,
      x: {
        label: 'repetitions in reserve →',
        labelAnchor: 'center',
        labelOffset: 38,
        domain: [-furthest / 20, furthest * 1.03],
        ticks: 6,
        tickSize: 0,
        grid: true,
      },
      y: {
        label: 'load, % of 1RM',
        domain: [lightest - NAME_ROOM, MAPPED_LOAD.to + NAME_ROOM],
        ticks: 9,
        tickSize: 0,
        grid: true,
      },
      r: { type: 'identity' },
      marks: [
        ...(shading?.marks ?? []),
        ...splitMarks(map, lightest),
        ...regionMarks(regions, shading !== null),
        ...bandsOf(map).flatMap((band) => placeMarks(map, band)),
        ...numberMarks(regions),
      ],
    },
    title: titleOf(map),
    caption: [captionOf(map, words), shading?.caption].filter(Boolean).join(' '),
    table: shading?.table ?? { columns: CELL_COLUMNS, rows: map.cells.map(tellCell) },
  });
}

function bandsOf({ split }: EvidenceMap): readonly BandName[] {
  return split === null ? ['all'] : ['light', 'heavy'];
}

/** Outlined alone over a shading, whose steps a tone of their own would change. */
function regionMarks(regions: readonly Region[], isShaded: boolean): Plot.Markish[] {
  return [
    Plot.rect(regions, {
      x1: 'reserveFrom',
      x2: 'reserveTo',
      y1: 'loadFrom',
      y2: 'loadTo',
      fill: isShaded ? 'none' : 'currentColor',
      fillOpacity: 0.07,
      stroke: 'currentColor',
      strokeDasharray: '3,3',
      strokeOpacity: 0.7,
    }),
  ];
}

/** The split, and the names of the bands above and below all that is mapped. */
function splitMarks({ split }: EvidenceMap, lightest: number): Plot.Markish[] {
  if (split === null) return [];
  const names = [
    { band: 'heavy', load: MAPPED_LOAD.to + NAME_ROOM / 2 },
    { band: 'light', load: lightest - NAME_ROOM / 2 },
  ] as const;
  return [
    Plot.ruleY([split], { stroke: 'currentColor', strokeWidth: 1.5 }),
    ...names.map(({ band, load }) =>
      Plot.text([LOAD_NAMES[band]], {
        y: () => load,
        frameAnchor: 'right',
        dx: -4,
        fill: LOAD_LOOKS[band].colour,
        fontWeight: 600,
      }),
    ),
  ];
}

/** Numbers of the regions, as the caption has them. */
function numberMarks(regions: readonly Region[]): Plot.Markish[] {
  return [
    Plot.text(regions, {
      x: ({ reserveFrom, reserveTo }: Region) => (reserveFrom + reserveTo) / 2,
      y: ({ loadFrom, loadTo }: Region) => (loadFrom + loadTo) / 2,
      text: ({ region }: Region) => String(region),
      fontWeight: 600,
      fill: 'currentColor',
      stroke: 'var(--paper)',
      strokeWidth: 5,
    }),
  ];
}

function placeMarks({ places }: EvidenceMap, band: BandName): Plot.Markish[] {
  const { colour, symbol } = LOAD_LOOKS[band];
  const most = places.reduce((largest, { people }) => Math.max(largest, people), 1);
  const marks = places
    .filter((place) => place.band === band)
    .map((place) => ({ ...place, radius: Math.max(LEAST_RADIUS, MOST_RADIUS * Math.sqrt(place.people / most)) }));
  return [
    Plot.dot(marks, {
      x: 'reserve',
      y: 'load',
      r: 'radius',
      symbol,
      fill: colour,
      fillOpacity: 0.28,
      stroke: colour,
      strokeWidth: 1,
    }),
    Plot.text(
      marks.filter(({ arms }) => arms > 1),
      { x: 'reserve', y: 'load', text: ({ arms }) => String(arms), fontSize: 11, fill: 'var(--ink)' },
    ),
  ];
}

function titleOf({ regions, outcome, split }: EvidenceMap): string {
  const [first] = regions;
  const about = upperFirst(outcome);
  if (!first) return `${about}: no large gap among the loads and reserves studied`;
  return `${about}: ${lowerFirst(stateEmptyRegion(first, split))}`;
}

function captionOf(map: EvidenceMap, words: readonly string[]): string {
  const { arms, people, studies, outcome, without, notFitted, outsideCells } = map;
  const aside = [
    notFitted > 0 ? `${countOf(notFitted, 'arm')} on the map ${isOrAre(notFitted)} not in the fit` : '',
    without.beyondFailure > 0
      ? `${countOf(without.beyondFailure, 'arm')} that went beyond failure ${isOrAre(without.beyondFailure)} not on the map`
      : '',
    without.loadOrReserve > 0
      ? `${countOf(without.loadOrReserve, 'arm')} without a load or a reserve ${isOrAre(without.loadOrReserve)} not on the map`
      : '',
    outsideCells > 0
      ? `${countOf(outsideCells, 'arm')} ${isOrAre(outsideCells)} outside ${MAPPED_LOAD.from} to ${MAPPED_LOAD.to}\u00a0% or ${MAPPED_RESERVE.from} to ${MAPPED_RESERVE.to} in reserve, where the table of numbers ends`
      : '',
  ].filter(Boolean);
  const looks =
    map.split === null
      ? 'Marks'
      : `Diamonds are light loads, circles heavy ones, split at ${map.split}\u00a0% of 1RM; marks`;
  return [
    `${countOf(arms, 'arm')} and ${countOf(people, 'person', 'people')} of ${countStudies(studies)} that measured ${outcome}. ${looks} are sized by people, a number is the arms at one place; the same people may stand at several.`,
    words.length > 0 && arms > 0
      ? `Largest empty regions between ${MAPPED_LOAD.from} and ${MAPPED_LOAD.to}\u00a0% and ${MAPPED_RESERVE.from} and ${MAPPED_RESERVE.to} in reserve: ${words.join(' ')}`
      : '',
    aside.length > 0 ? `${aside.join('; ')}.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/** “75 to below 80”; the last cell holds its upper line. */
function showCell([low, high]: readonly [number, number], last: number): string {
  return `${low} to ${high === last ? '' : 'below '}${high}`;
}

function isOrAre(count: number): string {
  return count === 1 ? 'is' : 'are';
}
