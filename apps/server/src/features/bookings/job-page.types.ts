/** What the complaint form needs to know of a car. */
export interface VehicleForJob {
  id: string;
  car: string;
  registration: string;
  customerName: string;
  jobs: { id: string; number: number; what: string }[];
}
