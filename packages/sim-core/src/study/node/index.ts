export { type PoolOptions, type StudyPool, startPool } from './pool.ts';
