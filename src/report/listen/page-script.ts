/**
 * What a listening page does when it is opened: buttons in place of the browser's controls, one sound at a time, and a line
 * that follows the notes. It asks for nothing and keeps nothing.
 */
export const PAGE_SCRIPT = `'use strict';
(() => {
  const jumps = matchMedia('(prefers-reduced-motion: reduce)');
  let stopOther = () => {};
  const placeAt = (path, seconds) => {
    const i = path.findLastIndex((point) => point[0] <= seconds);
    if (i < 0) return null;
    const [from, x, top, bottom] = path[i];
    const next = path[i + 1];
    if (jumps.matches || next === undefined || next[2] !== top || next[1] < x) return [x, top, bottom];
    return [x + ((next[1] - x) * (seconds - from)) / (next[0] - from), top, bottom];
  };
  const show = ({ line, path }, seconds) => {
    const place = seconds === null ? null : placeAt(path, seconds);
    line.setAttribute('visibility', place === null ? 'hidden' : 'visible');
    if (place === null) return;
    const [x, top, bottom] = place;
    for (const [name, value] of [['x1', x], ['x2', x], ['y1', top], ['y2', bottom]]) line.setAttribute(name, value);
  };
  for (const player of document.querySelectorAll('.player')) {
    const audio = player.querySelector('audio');
    const buttons = [...player.querySelectorAll('button')];
    const heads = [...player.closest('article').querySelectorAll('svg[data-path]')].map((svg) => ({
      line: svg.querySelector('.playhead'),
      path: JSON.parse(svg.dataset.path),
    }));
    let pressed = null;
    const follow = () => {
      if (pressed === null) return;
      for (const head of heads) show(head, audio.currentTime);
      requestAnimationFrame(follow);
    };
    const stop = () => {
      pressed = null;
      audio.pause();
      for (const button of buttons) button.setAttribute('aria-pressed', 'false');
      for (const head of heads) show(head, null);
    };
    const play = (button) => {
      stopOther();
      stopOther = stop;
      pressed = button;
      button.setAttribute('aria-pressed', 'true');
      audio.preservesPitch = true;
      audio.playbackRate = Number(button.dataset.rate);
      audio.currentTime = 0;
      audio.play().then(follow, stop);
    };
    audio.controls = false;
    audio.addEventListener('ended', stop);
    for (const button of buttons) {
      button.hidden = false;
      button.addEventListener('click', () => (pressed === button ? stop() : play(button)));
    }
  }
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') stopOther();
  });
  for (const note of document.querySelectorAll('.without-scripts')) note.hidden = true;
  for (const note of document.querySelectorAll('.with-scripts')) note.hidden = false;
})();
`;
