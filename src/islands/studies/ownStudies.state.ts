/** State of the Studies page of a reader's own table: what a worker made of it, and the study that the address names. */
import { computed, signal } from '@preact/signals';
import { defaultSettings } from '../../model/settings.ts';
import { OWN_TABLE, readMark } from '../../ownTable/ownTable.ts';
import { startCalculation } from '../analysis/calculation.ts';
import type { StudiesView } from '../analysis/studiesView.ts';

/** @param site id of the part of the page that shows the site's own table */
export function createOwnStudies(site: string) {
  /** True where there is an own table to show. */
  const isOwn = signal(false);
  const view = signal<StudiesView | null>(null);
  const problem = signal<string | null>(null);
  const wanted = signal<string | null>(null);
  /** The study that the address names; null where it names none of the table. */
  const chosen = computed(() => view.value?.reports.find(({ study }) => study === wanted.value) ?? null);

  const connect = () => {
    if (!readMark()) return undefined;
    isOwn.value = true;
    const shipped = document.getElementById(site);
    shipped?.setAttribute('hidden', '');
    const calculation = startCalculation(
      (reply) => {
        if (reply.kind === 'problem') problem.value = reply.problem;
        if (reply.kind === 'studies') view.value = reply.studies;
      },
      (reason) => {
        problem.value = reason;
      },
    );
    calculation.ask({ kind: 'studies', id: 0, table: OWN_TABLE, settings: defaultSettings });
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
  return { isOwn, view, problem, chosen, connect };
}
