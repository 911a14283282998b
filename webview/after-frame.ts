/** Runs something once the next frame is out, the one that shows what was just written. */
export function afterFrame(run: () => void): void {
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      run();
    };
    port2.postMessage(undefined);
  });
}
