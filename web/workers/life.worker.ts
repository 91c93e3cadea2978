import { workOnceTold } from '../language/worker-language.ts';

workOnceTold(async () => (await import('./life-work.ts')).take);
