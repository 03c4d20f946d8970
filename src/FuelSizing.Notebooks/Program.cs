using FuelSizing.Notebooks;

int code = await NotebookProgram.RunAsync(args, Console.Out, Console.Error).ConfigureAwait(false);

// Returning would wait for every thread that a cell has left running.
Environment.Exit(code);
