import { heatRemovedTable } from './heat-removed.table';
import type { PublishedTable } from './published-table';

export const branchHeatRemovedTable: PublishedTable = {
  ...heatRemovedTable,
  title: 'branch heat removed, W',
  subject: { point: 'branch.<id>.heatRemoved' },
};
