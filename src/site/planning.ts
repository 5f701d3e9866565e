/** What one more study would do to the site's own answer, worked out once for all pages. */
import { viewGains } from '../islands/analysis/gainsView.ts';
import { findNextStudy } from '../model/plan/nextStudy.ts';
import { openPlanning } from '../model/plan/planningBase.ts';
import { stateNextStudy } from '../practice/nextStudy.ts';
import { finish, site } from './site.ts';

/** Of the site's own table and settings. */
export const planning = openPlanning(site.arms, site.analysis.settings);

/** Over the evidence map, with as many people as a study of the table usually has. */
export const gains = finish(viewGains(planning, null));

/** The best one in words. */
export const nextStudy = stateNextStudy(findNextStudy(planning));
