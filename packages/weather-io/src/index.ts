export * from './year.ts';
