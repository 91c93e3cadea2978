/**
 * In a worker: a way to wait until the messages that already came have been delivered, without waiting for a timer. A message
 * to ourselves queues behind them.
 */
export function messagesDelivered(): () => Promise<void> {
  const channel = new MessageChannel();
  const waiting: (() => void)[] = [];
  channel.port1.onmessage = () => waiting.shift()?.();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      channel.port2.postMessage(null);
    });
}
