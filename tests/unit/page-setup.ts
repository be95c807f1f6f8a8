import { cleanup, configure } from '@testing-library/preact';
import { afterEach } from 'vitest';

// As long as what is awaited takes on a busy machine; a test that gets it goes on at once.
configure({ asyncUtilTimeout: 15_000 });

afterEach(cleanup);
