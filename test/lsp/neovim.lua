-- A second real client: Neovim's own, headless. Prints one line of JSON with what the server gave it.
local command, file = vim.split(vim.env.SCANT_COMMAND, '\n'), vim.env.SCANT_FILE
local said = {}
vim.cmd('edit ' .. vim.fn.fnameescape(file))
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({ name = 'scant', cmd = command, root_dir = vim.fn.fnamemodify(file, ':h') })
vim.lsp.buf_attach_client(buffer, client)
local function ask(method, params)
  local answers = vim.lsp.buf_request_sync(buffer, method, params, 10000) or {}
  local answer = answers[client] or {}
  return answer.result
end
local function at(line, character)
  return { textDocument = vim.lsp.util.make_text_document_params(buffer), position = { line = line, character = character } }
end
vim.wait(10000, function() return vim.lsp.buf_is_attached(buffer, client) and #vim.diagnostic.get(buffer) > 0 end, 20)
said.problems = vim.tbl_map(function(each) return each.message end, vim.diagnostic.get(buffer))
said.encoding = vim.lsp.get_client_by_id(client).offset_encoding
said.hover = ask('textDocument/hover', at(2, 2)).contents.value
local items = ask('textDocument/completion', at(2, 2))
said.completions = vim.tbl_map(function(each) return each.label end, items.items or items)
local rename = at(0, 7)
rename.newName = 'navy'
vim.lsp.util.apply_workspace_edit(ask('textDocument/rename', rename), said.encoding)
said.renamed = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)
local layout = at(0, 0)
layout.options = { tabSize = 2, insertSpaces = true }
vim.lsp.util.apply_text_edits(ask('textDocument/formatting', layout), buffer, said.encoding)
said.formatted = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)
io.stdout:write('SAID ' .. vim.json.encode(said) .. '\n')
vim.cmd('qa!')
