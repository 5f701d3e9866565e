/** State of the Studies page of a reader's own table: what a worker made of it, and the study that the address names. */
import { computed, signal } from '@preact/signals';
import { defaultSettings } from '../../model/settings.ts';
import { openCalculation } from '../analysis/calculation.ts';
import type { StudiesView } from '../analysis/studiesView.ts';

/**
 * @param table address of the table that is read
 * @param site id of the part of the page that shows the site's own table
 */
export function createOwnStudies(table: string, site: string) {
  const view = signal<StudiesView | null>(null);
  const problem = signal<string | null>(null);
  const wanted = signal<string | null>(null);
  /** The study that the address names; null where it names none of the table. */
  const chosen = computed(() => view.value?.reports.find(({ study }) => study === wanted.value) ?? null);
  const calculation = openCalculation();

  const ask = () => {
    problem.value = null;
    const take = (studies: StudiesView) => {
      view.value = studies;
    };
    const fail = (reason: string) => {
      problem.value = reason;
    };
    calculation.ask('studies', { table, settings: defaultSettings }, { progress: take, take, fail });
  };
  const connect = () => {
    const shipped = document.getElementById(site);
    shipped?.setAttribute('hidden', '');
    ask();
    const follow = () => {
      wanted.value = new URLSearchParams(location.hash.slice(1)).get('study');
    };
    follow();
    addEventListener('hashchange', follow);
    return () => {
      calculation.end();
      removeEventListener('hashchange', follow);
      shipped?.removeAttribute('hidden');
    };
  };
  return { view, problem, chosen, retry: ask, connect };
}
