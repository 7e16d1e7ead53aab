/** Entry of the command line `plumule`. */
import { endWithOutput } from './output.ts';
import { run } from './run.ts';

endWithOutput();
void run(process.argv.slice(2));
