/** Published results that stand beside ours for comparison; never part of a fit. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import * as z from 'zod';

const publishedSchema = z.strictObject({
  topic: z.string().min(1),
  /** Empty where nothing was found. */
  source: z.string(),
  doi: z.string(),
  finding: z.string().min(1),
  estimate: z.string(),
  /** How the value is known. */
  known: z.enum(['abstract read', 'paper read', 'second-hand', 'not found']),
});

const text = readFileSync('data/published.csv', 'utf8');
export const published: readonly z.infer<typeof publishedSchema>[] = z
  .array(publishedSchema)
  .parse(Papa.parse(text, { header: true, skipEmptyLines: true }).data);
