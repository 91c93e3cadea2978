import type { WriteReply, WriteRequest } from './write-anywhere.ts';
import { writeFile } from './write-file.ts';

self.onmessage = ({ data: { folder, path, content } }: MessageEvent<WriteRequest>) => {
  const reply = (answer: WriteReply): void => self.postMessage(answer);
  writeFile(folder, path, content).then(
    (bytes) => reply({ bytes }),
    (error: Error) => reply({ name: error.name, message: error.message }),
  );
};
