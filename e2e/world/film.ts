import { writeFileSync } from 'node:fs';

/** Rows of dark and light modules. */
type Modules = readonly (readonly boolean[])[];

const WIDTH = 640;
const HEIGHT = 480;

/**
 * Writes what Chromium's made-up camera shows: a still of a code on grey, as YUV4MPEG2 (the form that
 * --use-file-for-fake-video-capture takes, Chromium's media/capture/video/file_video_capture_device).
 */
export function writeFilm(file: string, code: Modules): void {
  const luma = Buffer.alloc(WIDTH * HEIGHT, 190);
  const across = Math.max(...code.map((row) => row.length));
  const scale = Math.floor(Math.min((WIDTH - 80) / across, (HEIGHT - 80) / code.length));
  const left = Math.floor((WIDTH - across * scale) / 2);
  const top = Math.floor((HEIGHT - code.length * scale) / 2);
  for (let y = 0; y < code.length * scale; y += 1) {
    for (let x = 0; x < across * scale; x += 1) {
      const isDark = code[Math.floor(y / scale)]?.[Math.floor(x / scale)] === true;
      luma[(top + y) * WIDTH + left + x] = isDark ? 30 : 225;
    }
  }
  const colour = Buffer.alloc((WIDTH * HEIGHT) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, colour]);
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`);
  writeFileSync(file, Buffer.concat([head, frame, frame]));
}
