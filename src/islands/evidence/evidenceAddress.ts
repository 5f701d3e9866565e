/**
 * The Evidence page as an address: the settings as everywhere (settingsAddress.ts), and beside them what only this page
 * shows: the settings that are pinned, as an address inside the address, and where a new study would lie.
 *
 *     ?v=2&curve=log&pin=v%3D2%26curve%3Dline&new=shown
 */
import type { Settings } from '../../model/settings.ts';
import { readSettings, writeSettings } from '../analysis/settingsAddress.ts';

export interface EvidenceView {
  readonly settings: Settings;
  /** Settings that the present ones are compared with; null where none are. */
  readonly pinned: Settings | null;
  /** True where the interval for a new study is drawn beside that for the average. */
  readonly showsNewStudy: boolean;
}

const PIN = 'pin';
const NEW = { name: 'new', value: 'shown' } as const;
/** An address of the defaults, where something else follows or it stands for a pin. */
const DEFAULTS = '?v=2';

/** Query of an address, with its question mark; empty for the defaults alone. */
export function writeView({ settings, pinned, showsNewStudy }: EvidenceView): string {
  const query = writeSettings(settings);
  if (!pinned && !showsNewStudy) return query;
  const parameters = new URLSearchParams(query || DEFAULTS);
  if (pinned) parameters.set(PIN, (writeSettings(pinned) || DEFAULTS).slice(1));
  if (showsNewStudy) parameters.set(NEW.name, NEW.value);
  return `?${parameters}`;
}

/** What a query shows, and what of it could not be taken; never throws, whatever it holds. */
export function readView(query: string): EvidenceView & { readonly notice: string | null } {
  const parameters = new URLSearchParams(query);
  const [pin, fresh] = [PIN, NEW.name].map((name) => {
    const value = parameters.get(name);
    parameters.delete(name);
    return value;
  });
  const own = readSettings(parameters.size > 0 ? `?${parameters}` : '');
  const other = pin === null ? null : readSettings(`?${pin}`);
  const notices = [
    own.notice,
    other?.notice ? `Of what is pinned: ${other.notice}` : null,
    fresh !== null && fresh !== NEW.value
      ? `Parts of the address could not be read and stand at their defaults: ${NEW.name}.`
      : null,
  ];
  return {
    settings: own.settings,
    pinned: other?.settings ?? null,
    showsNewStudy: fresh === NEW.value,
    notice: notices.filter(Boolean).join(' ') || null,
  };
}
