import { Injectable } from '@nestjs/common';
import { violatedConstraint } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { instantAt } from '../../web/dates.ts';
import { JobStages } from '../job-cards/job-stages.service.ts';
import { calledOffAlready, handsTaken, jobIsOver, noJob, noSuchTime, notOnTheList, placeTaken } from './bookings.errors.ts';
import { BookingsRepository, type Place } from './bookings.repository.ts';
import type { BookingDto } from './dto/booking.dto.ts';
import { JobsRepository } from './jobs.repository.ts';

const GONE = new Set(['keys-out', 'squared', 'fell-through']);

@Injectable()
export class BookingsService {
  constructor(
    private readonly bookings: BookingsRepository,
    private readonly jobs: JobsRepository,
    private readonly stages: JobStages,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async choices(): Promise<{ places: Place[]; hands: { id: string; displayName: string }[] }> {
    const [places, hands] = await Promise.all([this.bookings.places(), this.bookings.hands()]);
    return { places, hands };
  }

  /** The plan is kept free of overlaps by the database, whoever books first. */
  async book(jobId: string, input: BookingDto): Promise<void> {
    const [{ timeZone }, { places, hands }] = await Promise.all([this.workshop.get(), this.choices()]);
    const place = places.find(({ id }) => id === input.placeId);
    if (!place) throw notOnTheList('placeId');
    if (input.staffId !== undefined && !hands.some(({ id }) => id === input.staffId)) throw notOnTheList('staffId');
    const startsAt = instantAt(input.day, input.from, timeZone);
    if (!startsAt) throw noSuchTime('from');
    const endsAt = new Date(startsAt.getTime() + Number(input.minutes) * 60_000);
    try {
      await this.unitOfWork.run(async (tx) => {
        const job = await this.jobs.lock(tx, jobId);
        if (!job) throw noJob();
        if (GONE.has(job.stage)) throw jobIsOver();
        const id = await this.bookings.book(tx, {
          jobId,
          placeId: place.id,
          staffId: input.staffId ?? null,
          phase: input.phase,
          startsAt,
          endsAt,
        });
        if (job.stage === 'spoken-of') await this.stages.move(tx, { jobId, from: 'spoken-of', to: 'expected' });
        await this.audit.record(tx, {
          action: 'booked',
          subject: 'job',
          subjectId: jobId,
          after: { booking: id, place: place.name, startsAt: startsAt.toISOString() },
        });
        return null;
      });
    } catch (error) {
      const constraint = violatedConstraint(error);
      if (constraint === 'booking_place_no_overlap') throw placeTaken(place.name);
      if (constraint === 'booking_hands_no_overlap') throw handsTaken();
      throw error;
    }
  }

  /** @returns the job's id. */
  async callOff(bookingId: string): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      const jobId = await this.bookings.callOff(tx, bookingId, this.clock.now());
      if (jobId === undefined) throw calledOffAlready();
      await this.audit.record(tx, { action: 'called off', subject: 'booking', subjectId: bookingId });
      return jobId;
    });
  }
}
