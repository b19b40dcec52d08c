import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { VehiclesService } from '../customers/vehicles.service.ts';
import { EstimatesService } from '../estimates/estimates.service.ts';
import { BookingsService } from './bookings.service.ts';
import { ArrivalDto } from './dto/arrival.dto.ts';
import { BookingDto } from './dto/booking.dto.ts';
import { EndDebtDto } from './dto/end-debt.dto.ts';
import { TakeComplaintDto } from './dto/take-complaint.dto.ts';
import { presentTakeComplaint, type TakeComplaintView } from './job-form.presenter.ts';
import { type JobView, presentJob } from './job.presenter.ts';
import { JobsService } from './jobs.service.ts';

@ApiExcludeController()
@Controller('counter')
@Only('desk', 'owner')
export class JobsController {
  constructor(
    private readonly jobs: JobsService,
    private readonly bookings: BookingsService,
    private readonly estimates: EstimatesService,
    private readonly vehicles: VehiclesService,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get('vehicles/:vehicleId/jobs/new')
  @Render('features/bookings/views/take-complaint.hbs')
  async ask(@Param('vehicleId', IdPipe) vehicleId: string, @FormBack('complaint') form: FormState): Promise<TakeComplaintView> {
    const [vehicle, templates] = await Promise.all([this.vehicles.withHistory(vehicleId), this.jobs.templates()]);
    return presentTakeComplaint(form, {
      templates,
      vehicle: {
        id: vehicle.id,
        car: `${vehicle.make} ${vehicle.model}`,
        registration: vehicle.registration,
        customerName: vehicle.customer.name,
        jobs: vehicle.jobs.map(({ id, number, template }) => ({ id, number, what: template.name })),
      },
    });
  }

  @Post('vehicles/:vehicleId/jobs/new')
  @Redirect('/', 303)
  async take(@Param('vehicleId', IdPipe) vehicleId: string, @Body() input: TakeComplaintDto): Promise<{ url: string }> {
    const id = await this.jobs.takeComplaint(vehicleId, input);
    return { url: await this.flashes.say(urls.job(id), 'The complaint is written down. Next: the yes, then a place and a time.') };
  }

  @Get('jobs/:id')
  @Render('features/bookings/views/job.hbs')
  async job(
    @Param('id', IdPipe) id: string,
    @FormBack('arrival') arrival: FormState,
    @FormBack('booking') booking: FormState,
    @FormBack('debt') debt: FormState,
  ): Promise<JobView> {
    const [{ job, phases }, yeses, choices, nextKeyTag, { timeZone, currency }] = await Promise.all([
      this.jobs.withPhases(id),
      this.estimates.yeses(id),
      this.bookings.choices(),
      this.jobs.nextKeyTag(),
      this.workshop.get(),
    ]);
    const facts = { job, phases, yeses, ...choices, nextKeyTag, now: this.clock.now(), timeZone, currency };
    return presentJob(facts, { arrival, booking, debt });
  }

  @Post('jobs/:id/arrival')
  @Redirect('/', 303)
  async arrive(@Param('id', IdPipe) id: string, @Body() input: ArrivalDto): Promise<{ url: string }> {
    await this.jobs.arrive(id, input);
    return { url: await this.flashes.say(urls.job(id), `The car stands here under key tag ${input.keyTag}.`) };
  }

  @Post('jobs/:id/booking')
  @Redirect('/', 303)
  async book(@Param('id', IdPipe) id: string, @Body() input: BookingDto): Promise<{ url: string }> {
    await this.bookings.book(id, input);
    return { url: await this.flashes.say(urls.job(id), 'It is booked.') };
  }

  @Post('jobs/:id/fell-through')
  @Redirect('/', 303)
  async fellThrough(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.jobs.fellThrough(id);
    return { url: await this.flashes.say(urls.job(id), 'The job fell through; its bookings are called off.') };
  }

  @Post('bookings/:bookingId/call-off')
  @Redirect('/', 303)
  async callOff(@Param('bookingId', IdPipe) bookingId: string): Promise<{ url: string }> {
    const id = await this.bookings.callOff(bookingId);
    return { url: await this.flashes.say(urls.job(id), 'The booking is called off.') };
  }

  @Post('debts/:debtId/end')
  @Only('owner')
  @Redirect('/', 303)
  async endDebt(@Param('debtId', IdPipe) debtId: string, @Body() input: EndDebtDto): Promise<{ url: string }> {
    const id = await this.jobs.endDebt(debtId, input);
    return { url: await this.flashes.say(urls.job(id), 'That is settled.') };
  }
}
