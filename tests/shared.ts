import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Folder with reference tables and real weather files: NOONLOOP_SHARED, or `shared` beside the checkout. */
const folder = process.env.NOONLOOP_SHARED ?? fileURLToPath(new URL('../../shared', import.meta.url));

/** Path of a file in the shared folder, such as `weather/tmy3-greensboro-nc.csv`. */
export const sharedFile = (path: string): string => `${folder}/${path}`;

/** Whether a shared file is there; tests that need it are skipped, and reported as skipped, where it is not. */
export const hasShared = (path: string): boolean => existsSync(sharedFile(path));
