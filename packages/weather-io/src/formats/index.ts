import { epw } from './epw.ts';
import type { Format } from './format.ts';
import { nsrdb } from './nsrdb.ts';
import { plain } from './plain.ts';
import { pvgis } from './pvgis.ts';
import { tmy3 } from './tmy3.ts';

/** Every format that is read. */
export const FORMATS: readonly Format[] = [tmy3, epw, pvgis, nsrdb, plain];
