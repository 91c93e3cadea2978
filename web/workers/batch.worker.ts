import { workOnceTold } from '../language/worker-language.ts';

workOnceTold(async () => (await import('./batch-work.ts')).take);
