// Some hours of each day against the referee; all of them: referee.long.test.ts.
import { holdDays } from './referee-tests.ts';

holdDays(false);
