/**
 * Settings as an address: short, versioned, and only what differs from the defaults.
 *
 *     ?v=2&curve=log&split=none&muscle=quadriceps&muscle=biceps+brachii
 *
 * Reading validates every part with the settings schema. A part that does not hold stands at its
 * default and is named in a notice. An address of version 1 is still read, with the curve that was the
 * default then; one of any other version is not read at all.
 */
import { FILTERS, mapFilters } from '../../model/filters.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../model/settings.ts';

/** Raised when an old address would mean something else. */
export const VERSION = '2';
/** What stood at its default in addresses of version 1, where that was another than now. */
const FIRST_DEFAULTS = { version: '1', curve: 'line' } as const;

/** Name in the address of each setting. */
const NUMBERS = {
  split: 'split',
  rho: 'rho',
  keptShare: 'keep',
  confidence: 'level',
  fatigueMargin: 'margin',
  seed: 'seed',
} as const;
const WORDS = {
  outcome: 'outcome',
  metric: 'metric',
  curve: 'curve',
  weighting: 'weights',
  missingSds: 'sds',
} as const;
const LISTS = { ...mapFilters((key) => FILTERS[key].address), withoutStudies: 'without' } as const;
const YEARS = { yearFrom: 'from', yearTo: 'to' } as const;
/** Groups of numbers, written with commas in this order. */
const GROUPS = {
  assumedCorrelation: { name: 'r', keys: ['growth', 'strength', 'fatigue'] },
  smallestWorthwhile: { name: 'worth', keys: ['log-ratio', 'standardised'] },
} as const;
const NONE = 'none';

interface ReadAddress {
  readonly settings: Settings;
  /** What could not be taken, for the reader; null where everything was. */
  readonly notice: string | null;
}

/** Query of an address, with its question mark; empty for the defaults. */
export function writeSettings(settings: Settings): string {
  const parameters = new URLSearchParams();
  const differs = (a: unknown, b: unknown) => JSON.stringify(a) !== JSON.stringify(b);
  for (const [key, name] of [...keysOf(WORDS), ...keysOf(NUMBERS)]) {
    if (differs(settings[key], defaultSettings[key])) parameters.set(name, String(settings[key] ?? NONE));
  }
  for (const [key, { name, keys }] of keysOf(GROUPS)) {
    const group: Readonly<Record<string, number>> = settings[key];
    if (differs(group, defaultSettings[key])) parameters.set(name, keys.map((part) => group[part]).join(','));
  }
  for (const adjustment of settings.adjust) parameters.append('adjust', adjustment);
  for (const [key, name] of keysOf(LISTS)) for (const value of settings.include[key]) parameters.append(name, value);
  for (const [key, name] of keysOf(YEARS)) {
    const year = settings.include[key];
    if (year !== null) parameters.set(name, String(year));
  }
  if (parameters.size === 0) return '';
  return `?${new URLSearchParams([['v', VERSION], ...parameters])}`;
}

/** Settings of a query; never throws, whatever it holds. */
export function readSettings(query: string): ReadAddress {
  const parameters = new URLSearchParams(query);
  if (parameters.size === 0) return { settings: defaultSettings, notice: null };
  const version = parameters.get('v');
  const isFirst = version === FIRST_DEFAULTS.version;
  if (version !== VERSION && !isFirst) {
    return {
      settings: defaultSettings,
      notice: `The address is not of version ${VERSION} and was not read; everything stands at its default.`,
    };
  }
  const unread = new Set([...parameters.keys()].filter((name) => name !== 'v' && !KNOWN_NAMES.has(name)));
  let raw = readRaw(parameters);
  const parse = () => settingsSchema.safeParse(isFirst ? { curve: FIRST_DEFAULTS.curve, ...raw.values } : raw.values);
  let parsed = parse();
  while (!parsed.success) {
    // Each round gives up the settings that the schema names, so it ends.
    const bad = new Set(parsed.error.issues.map(({ path }) => String(path[0] === 'include' ? path[1] : path[0])));
    for (const key of bad) unread.add(raw.names.get(key) ?? key);
    raw = { names: raw.names, values: without(raw.values, bad) };
    parsed = parse();
  }
  const list = [...unread];
  const notices = [
    ...(list.length > 0
      ? [`Parts of the address could not be read and stand at their defaults: ${list.join(', ')}.`]
      : []),
    ...(isFirst && !('curve' in raw.values)
      ? ['The address is from when a straight line was the default, and keeps it; now a flexible curve is.']
      : []),
  ];
  return { settings: parsed.data, notice: notices.join(' ') || null };
}

interface RawSettings {
  readonly values: Record<string, unknown>;
  /** Name in the address of each key that was read. */
  readonly names: ReadonlyMap<string, string>;
}

function readRaw(parameters: URLSearchParams): RawSettings {
  const values: Record<string, unknown> = {};
  const include: Record<string, unknown> = {};
  const names = new Map<string, string>();
  const take = (key: string, name: string, target: Record<string, unknown>, value: unknown) => {
    target[key] = value;
    names.set(key, name);
  };
  for (const [key, name] of keysOf(WORDS)) if (parameters.has(name)) take(key, name, values, parameters.get(name));
  for (const [key, name] of keysOf(NUMBERS))
    if (parameters.has(name)) take(key, name, values, toShare(key, toNumber(parameters.get(name))));
  for (const [key, { name, keys }] of keysOf(GROUPS)) {
    const written = parameters.get(name)?.split(',');
    if (written) take(key, name, values, Object.fromEntries(keys.map((part, i) => [part, toNumber(written[i] ?? '')])));
  }
  if (parameters.has('adjust')) take('adjust', 'adjust', values, parameters.getAll('adjust'));
  for (const [key, name] of keysOf(LISTS)) if (parameters.has(name)) take(key, name, include, parameters.getAll(name));
  for (const [key, name] of keysOf(YEARS))
    if (parameters.has(name)) take(key, name, include, toNumber(parameters.get(name)));
  return { values: { ...values, include }, names };
}

/** A written number; null for “none”; the text itself where it is neither, for the schema to refuse. */
function toNumber(written: string | null): number | string | null {
  if (written === NONE || written === null) return null;
  return /^-?\d+(?:\.\d+)?$/u.test(written) ? Number(written) : written;
}

/** Shares are written as shares of 1, and read in per cent too, as Target writes them: none of either can be taken for the other. */
function toShare(key: keyof typeof NUMBERS, value: number | string | null): number | string | null {
  const isPercent = (key === 'keptShare' || key === 'confidence') && typeof value === 'number' && value > 1;
  return isPercent ? value / 100 : value;
}

function without(values: Record<string, unknown>, bad: ReadonlySet<string>): Record<string, unknown> {
  const keep = (record: object) => Object.fromEntries(Object.entries(record).filter(([key]) => !bad.has(key)));
  const { include, ...rest } = values;
  return { ...keep(rest), include: keep(include as object) };
}

function keysOf<Keys extends object>(names: Keys): [keyof Keys, Keys[keyof Keys]][] {
  return Object.entries(names) as [keyof Keys, Keys[keyof Keys]][];
}

const KNOWN_NAMES: ReadonlySet<string> = new Set([
  'adjust',
  ...Object.values({ ...WORDS, ...NUMBERS, ...LISTS, ...YEARS }),
  ...Object.values(GROUPS).map(({ name }) => name),
]);
