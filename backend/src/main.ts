import 'reflect-metadata';

export { startBackend } from './main/start-backend';
