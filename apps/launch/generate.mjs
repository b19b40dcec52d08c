// npm run generate: everything that is made from the sources and not committed, made again.
import './generate-client.mjs';
import './openapi-metadata.mjs';
