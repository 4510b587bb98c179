import { holdDays } from './referee-tests.ts';

holdDays(true);
