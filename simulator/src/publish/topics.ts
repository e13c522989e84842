/** Outside the demo site's topics, so that the backend never hears them. */
export const commandTopic = 'ebbline-simulator/command';
export const stateTopic = 'ebbline-simulator/state';
