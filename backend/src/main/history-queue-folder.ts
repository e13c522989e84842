/** In the data folder: rows that InfluxDB has not taken yet. */
export const historyQueueFolder = 'history-queue';
