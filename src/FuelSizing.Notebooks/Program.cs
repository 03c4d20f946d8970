using FuelSizing.Notebooks;

return await NotebookProgram.RunAsync(args, Console.Out, Console.Error).ConfigureAwait(false);
