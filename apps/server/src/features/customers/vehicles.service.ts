import { Injectable } from '@nestjs/common';
import { violatedConstraint } from '#libs/db';
import { checkVin } from '#libs/vin';
import { Audit } from '../../platform/audit.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { badVin, changedMeanwhile, noCustomer, noVehicle, registrationTaken } from './customers.errors.ts';
import { CustomersRepository } from './customers.repository.ts';
import type { VehicleDto } from './dto/vehicle.dto.ts';
import { type Vehicle, type VehicleFields, type VehicleHistory, VehiclesRepository } from './vehicles.repository.ts';

function fieldsOf({ registration, vin, built, make, model, engineCode, thermostatKind, note }: VehicleDto): VehicleFields {
  const [year, month] = built.split('-');
  return {
    make,
    model,
    thermostatKind,
    note,
    engineCode: engineCode.toUpperCase(),
    registration: registration.toUpperCase().replaceAll(' ', ''),
    vin: vin === '' ? null : vin.toUpperCase(),
    buildYear: built === '' ? null : Number(year),
    buildMonth: month === undefined ? null : Number(month),
  };
}

/** A VIN that cannot be one is refused; a check digit that only some regions use is the presenter's to mention. */
function refuseBadVin(vin: string | null): void {
  if (vin === null) return;
  const { problems, checkDigit } = checkVin(vin);
  const [problem] = problems;
  if (problem !== undefined) throw badVin(problem);
  if (checkDigit.binding && !checkDigit.matches) {
    throw badVin(`The ninth sign of this VIN should be ${checkDigit.expected}, not ${checkDigit.found}: one of the signs is mistyped.`);
  }
}

@Injectable()
export class VehiclesService {
  constructor(
    private readonly vehicles: VehiclesRepository,
    private readonly customers: CustomersRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  ofCustomer(customerId: string): Promise<Vehicle[]> {
    return this.vehicles.ofCustomer(customerId);
  }

  async get(id: string): Promise<Vehicle> {
    const vehicle = await this.vehicles.find(id);
    if (!vehicle) throw noVehicle();
    return vehicle;
  }

  async withHistory(id: string): Promise<VehicleHistory> {
    const vehicle = await this.vehicles.withHistory(id);
    if (!vehicle) throw noVehicle();
    return vehicle;
  }

  /** @returns the new vehicle's id. */
  async add(customerId: string, input: VehicleDto): Promise<string> {
    const fields = fieldsOf(input);
    refuseBadVin(fields.vin);
    return this.withRegistration(fields.registration, () =>
      this.unitOfWork.run(async (tx) => {
        if (!(await this.customers.find(customerId, tx))) throw noCustomer();
        const { id } = await this.vehicles.create(tx, customerId, fields);
        await this.audit.record(tx, { action: 'added', subject: 'vehicle', subjectId: id, personal: { after: fields } });
        return id;
      }),
    );
  }

  async change(id: string, version: number, input: VehicleDto): Promise<void> {
    const fields = fieldsOf(input);
    refuseBadVin(fields.vin);
    await this.withRegistration(fields.registration, () =>
      this.unitOfWork.run(async (tx) => {
        const before = await this.vehicles.find(id, tx);
        if (!before) throw noVehicle();
        const after = await this.vehicles.change(tx, id, { version, fields });
        if (!after) throw changedMeanwhile('vehicle');
        await this.audit.record(tx, {
          action: 'changed',
          subject: 'vehicle',
          subjectId: id,
          personal: { before: { ...before }, after: { ...after } },
        });
        return null;
      }),
    );
  }

  private async withRegistration<T>(registration: string, save: () => Promise<T>): Promise<T> {
    try {
      return await save();
    } catch (error) {
      if (violatedConstraint(error) === 'vehicle_registration') throw registrationTaken(registration);
      throw error;
    }
  }
}
