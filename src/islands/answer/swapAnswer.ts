/** Puts the answer of a reader's own table in the place of the site's, and back. All that draws it is fetched only then. */
import { addressOf, followTable } from '../../ownTable/tableInUse.ts';

const site = document.getElementById('site-answer');
const own = document.getElementById('own-answer');

if (site && own) {
  followTable(async (table, before) => {
    if (table.kind !== 'own' && before === null) return;
    site.hidden = table.kind === 'own';
    own.hidden = !site.hidden;
    const { showOwnAnswer } = await import('./OwnAnswer.tsx');
    const { target = '', evidence = '', plan = '' } = own.dataset;
    showOwnAnswer(own, table.kind === 'own' ? addressOf(table.about) : null, {
      target,
      evidence,
      plan,
    });
  });
}
