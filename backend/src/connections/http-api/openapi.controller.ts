import { Controller, Get, Inject } from '@nestjs/common';
import { PROGRAM_VERSION } from '../../ports/program-version';
import { openApiDocument } from './openapi-document';

/** The document of this interface. */
@Controller('api/openapi.json')
export class OpenApiController {
  private readonly document: ReturnType<typeof openApiDocument>;

  constructor(@Inject(PROGRAM_VERSION) version: string) {
    this.document = openApiDocument(version);
  }

  @Get()
  read(): ReturnType<typeof openApiDocument> {
    return this.document;
  }
}
