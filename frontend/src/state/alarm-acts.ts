/** What a screen of alarms may ask of the server; each answer is the server's, and is waited for. */
export { acknowledgeMany, journalExportPath } from '../api/alarms';
export { returnToService, shelve, takeOutOfService, unshelve } from '../api/set-aside';
