import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiOkResponse } from '@nestjs/swagger';
import { readLog, type Understood, type WarmUpAnalysis } from '#libs/warm-up';
import { AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { Files } from '../../platform/uploads/files.decorator.ts';
import type { UploadedFile } from '../../platform/uploads/request-files.ts';
import { TakesFiles } from '../../platform/uploads/takes-files.decorator.ts';
import { analyse } from './analysis-request/analyse.ts';
import { readSamples } from './analysis-request/read-samples.ts';
import { type AnalysisSettings, readSettings } from './analysis-request/read-settings.ts';
import { WarmUpAnalysisDto } from './dto/analysis.dto.ts';
import { decodeLog } from './log-file/decode-log.ts';
import { LOG_BYTES } from './log-file/log-bytes.ts';
import { badRequest, logAsks, noLog } from './warm-up.errors.ts';

type Answer = WarmUpAnalysis & { understood?: Understood };

/** Warm-up logs, judged by the same function that the Run-up uses. */
@Controller('api/v1/warm-up')
@AnyStaff()
@ChangesNothing()
export class AnalysesApiController {
  /**
   * What a log of the coolant temperature tells of the thermostat, with reasons and confidence; `not-enough` is a proper answer.
   * A file whose units or columns can't be told is answered 422 with what was understood and what is asked.
   */
  @Post('analyses')
  @HttpCode(200)
  @TakesFiles({ mostFiles: 1, mostBytes: LOG_BYTES, mostJsonBytes: LOG_BYTES })
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody({ type: WarmUpAnalysisDto })
  @ApiOkResponse({
    description:
      'verdict, confidence, openingC { estimate, low, high }, firstPeakC, plateauC, coldStart, warmUpRateCPerMin (each null where it can’t be had), reasons; beside them behaviour, knee, fit, timeTo80S, yardstick, advice, cautions, cleaned; of a file what was understood',
  })
  answer(@Body() body: unknown, @Files('file') [file]: readonly UploadedFile[]): Answer {
    if (typeof body !== 'object' || body === null || Array.isArray(body))
      throw badRequest([{ field: '', message: 'Send an object with samples, or a form with a file.' }]);
    const fields = body as Readonly<Record<string, unknown>>;
    const settings = readSettings(fields);
    if (file) return analyseFile(file, settings);
    const { answers: _ofAFile, ...known } = settings;
    return analyse({ samples: readSamples(fields['samples']), ...known });
  }
}

function analyseFile(file: UploadedFile, { answers, ...known }: AnalysisSettings): Answer {
  const log = readLog(decodeLog(file.bytes), answers);
  if (!log.ok) throw log.asks.length > 0 ? logAsks(log.problem, log) : noLog(log.problem, log.understood);
  return { ...analyse({ samples: log.samples, ...known }), understood: log.understood };
}
