import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Slow files, the slowest last: a mutant's run ends with the first test that fails, so the quick ones go first. */
const SLOW = [
  'likelihoodGrid',
  'response',
  'fits',
  'studyReports',
  'emptyRegions',
  'purposes',
  'compareTables',
  'rowChanges',
  'mixed',
  'degenerateTables',
  'report',
  'advice',
  'analyse',
  'checks',
];

class QuickestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => SLOW.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`));
    return [...files].sort((a, b) => rank(a) - rank(b));
  }
}

// The tests of what is mutated; those of pages, scripts and figures would hold the same numbers once more, slowly.
export default defineConfig({
  test: {
    root: '.',
    include: ['tests/{evidence,model,practice,reference}/**/*.test.ts'],
    // Thousands of tables, or large ones, each: minutes for every mutant.
    exclude: ['tests/evidence/{anyTable,blocks,mutatedTables,writeTable}.test.ts'],
    testTimeout: 30_000,
    isolate: false,
    sequence: { sequencer: QuickestFirst },
  },
});
