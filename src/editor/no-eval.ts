import { config } from 'zod';

// The records' library would try whether it may compile code at run time. Editors forbid that, and log the attempt.
config({ jitless: true });
