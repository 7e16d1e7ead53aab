/** Entry of the command line `plumule`. */
import { allowClosedPipe } from './output.ts';
import { run } from './run.ts';

allowClosedPipe();
void run(process.argv.slice(2));
