import type { ChangeSettingsRequest } from '@ebbline/shared/contract/alarm-list';

/** What a filled form asks for; who asks and of which entry is said by what stands around it. */
export type ChangeWish = Required<Pick<ChangeSettingsRequest, 'scope' | 'set' | 'basedOn' | 'reason' | 'link'>>;
