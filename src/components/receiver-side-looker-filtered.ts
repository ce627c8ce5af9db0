import { sideLooker } from './receiver-side-looker.js';
import type { Receiver } from './types.js';

/** For infrared emitters in daylight: its black body takes the visible away. */
export const sideLookerFiltered: Receiver = {
  ...sideLooker,
  title: 'side-looking phototransistor with lens and daylight filter, two legs',
  filterFromNm: {
    value: 780,
    source: 'Common practice, from the run of public datasheets, from memory: black bodies pass from 700 to 800 nm on',
  },
};
