/** Hangs gauges and reads them as one device, and says each entry that the shop has, until it is killed. */
import { Device, dimension, send } from './bay-device';

const [shop = 0, round = 0] = process.argv.slice(2).map(Number);
const device = new Device('aaa');
for (let setup = 1; ; setup += 1) {
  device.hang(`b1-${setup}aaa`);
  for (const repeat of [1, 2]) device.read(`b1-${setup}aaa`, dimension('A', 'L'), 300 + setup / 8, repeat);
  for (const entry of device.made.slice(-3)) {
    await send(shop, round, [entry]);
    console.log(entry.key);
  }
}
