export type Role = 'desk' | 'technician' | 'owner';
